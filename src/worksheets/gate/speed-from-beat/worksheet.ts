import { requireInterval } from '../../../quantity/errors.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  candidateSpacingFps,
  countedBeat,
  filmRatesFromBeat,
  type BeatCandidate,
} from '../../../core/gate/speed-from-beat.ts';
import { quantityAnswer } from '../../machine/labelled-answers.ts';
import { flashesPerFrameInput } from '../gate-inputs.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

/** Candidates printed in the table; a wide window at a slow camera holds many more. */
const LONGEST_TABLE = 20;

function howToTell({ side }: BeatCandidate, isTurnedOver: boolean): string {
  if (side === 0) return 'the beat starts, whichever way you nudge';
  const bands = side > 0 !== isTurnedOver ? 'climb' : 'sink';
  return side > 0 ? `the beat rises; bands ${bands}` : `the beat falls; bands ${bands}`;
}

function verdictFor(
  candidates: readonly BeatCandidate[],
  errorFps: number,
  isSettled: boolean,
): Outcome['verdict'] {
  const [first] = candidates;
  if (first === undefined) {
    return {
      level: 'stop',
      sentence:
        'No film rate in this window gives that beat: check the flashes per frame and the window.',
    };
  }
  if (candidates.length === 1) {
    return {
      level: 'good',
      sentence: `The film runs at ${formatQuantity(first.filmFps, 'fps', 5)}, give or take ${formatNumber(errorFps, 2)}.`,
    };
  }
  return {
    level: 'care',
    sentence: isSettled
      ? `${candidates.length} film rates fit this beat: narrow the window with a stopwatch.`
      : `${candidates.length} film rates fit this beat: speed the projector up a little and watch whether the beat rises or falls.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'speed-from-beat',
  title: 'Film rate from the beat',
  question: 'Which film rates fit the beat that is seen in the recording?',
  chapter: 'gate/measuring-speed',
  inputs: {
    beatPulses: {
      kind: 'quantity',
      label: 'Pulses counted',
      unit: 'pulses',
      minimum: 0,
      maximum: 10_000,
      default: '40',
      accepted: '40',
      help: 'Count how often the empty lit gate gets bright, or how many bands pass one height of the picture. Play the recording slowly if it is too fast to count.',
    },
    beatSeconds: {
      kind: 'quantity',
      label: 'Counted over',
      unit: 's',
      minimum: 0.5,
      maximum: 600,
      default: '10',
      accepted: '10 s',
      help: 'Time in the recording, not on the wall when it is played slowly.',
    },
    countErrorPulses: {
      kind: 'quantity',
      label: 'Error of the count',
      unit: 'pulses',
      minimum: 0,
      maximum: 100,
      default: '1/2',
      accepted: '1/2 or 1',
      help: 'How far the count may be out, in pulses.',
    },
    cameraFps: {
      kind: 'quantity',
      label: 'Camera rate',
      unit: 'fps',
      minimum: 5,
      maximum: 240,
      default: '25',
      accepted: '25, 50 or 30000/1001',
      help: 'Frames per second of the recording.',
      bench: 'camera.cameraFps',
    },
    flashesPerFrame: flashesPerFrameInput,
    slowestFps: {
      kind: 'quantity',
      label: 'Slowest film rate to consider',
      unit: 'fps',
      minimum: 0.5,
      maximum: 120,
      default: '15',
      accepted: '15',
      help: 'What the speed knob or a stopwatch lets you rule out below.',
    },
    fastestFps: {
      kind: 'quantity',
      label: 'Fastest film rate to consider',
      unit: 'fps',
      minimum: 0.5,
      maximum: 120,
      default: '21',
      accepted: '21',
      help: 'What the speed knob or a stopwatch lets you rule out above.',
    },
    observation: {
      kind: 'choice',
      label: 'What else was seen',
      options: {
        unknown: 'nothing yet',
        rises: 'sped up a little, the beat gets faster',
        falls: 'sped up a little, the beat gets slower',
        'bands-up': 'bands climb in the picture',
        'bands-down': 'bands sink in the picture',
      },
      default: 'unknown',
      help: 'The nudge test: speed the projector up by a trace and watch the beat. The bands tell the same in a camera that reads its rows from top to bottom.',
    },
    pictureWay: {
      kind: 'choice',
      label: 'The picture on the screen is',
      options: {
        'as-read': 'as the camera stood upright and recorded it',
        turned: 'turned over: camera on its head, or the file flipped top to bottom',
      },
      default: 'as-read',
      help: 'Turning the picture over turns the way of the bands. Turned twice is not turned. Left and right do not matter. Look at the raw recording if you are not sure.',
    },
  },
  model:
    'The beat is the distance of the flash rate from the nearest multiple of the camera rate. So each multiple gives two film rates, one above and one below. Holds for equal, equally spaced blades and a steady lamp; unequal blades also beat at the film rate itself, and a lamp on the mains beats without any film moving.',
  compute(inputs) {
    const { beatPulses, beatSeconds, countErrorPulses, cameraFps, flashesPerFrame } = inputs;
    // More pulses than half the camera frames cannot be seen as a beat: it would show as a slower one.
    requireInterval('beatPulses', beatPulses, {
      minimum: 0,
      maximum: (cameraFps / 2) * beatSeconds,
      unit: 'pulses',
    });
    const { beatHz, errorHz } = countedBeat(beatPulses, beatSeconds, countErrorPulses);
    const candidates = filmRatesFromBeat(
      beatHz,
      cameraFps,
      flashesPerFrame,
      inputs.slowestFps,
      inputs.fastestFps,
      inputs.observation,
      inputs.pictureWay === 'turned',
    );
    const errorFps = errorHz / flashesPerFrame;
    const spacing = candidateSpacingFps(cameraFps, flashesPerFrame);
    const cautions = [
      ...(beatHz > 0 && beatHz <= errorHz
        ? ['The beat is no larger than the error of the count: count over a longer time.']
        : []),
      ...(candidates.length > LONGEST_TABLE
        ? [`Only the slowest ${LONGEST_TABLE} of ${candidates.length} film rates are listed.`]
        : []),
    ];
    return {
      verdict: verdictFor(candidates, errorFps, inputs.observation !== 'unknown'),
      answers: {
        ...(candidates.length === 1 && candidates[0] !== undefined
          ? { filmFps: quantityAnswer('Film rate', candidates[0].filmFps, 'fps', 5) }
          : {}),
        beatHz: quantityAnswer('Beat', beatHz, 'Hz', 4),
        errorFps: quantityAnswer('Error of each film rate', errorFps, 'fps', 2),
        candidateCount: quantityAnswer('Film rates that fit', candidates.length, 'one'),
        spacingFps: quantityAnswer('Spacing on one side', spacing, 'fps', 4, {
          note: 'A window narrower than this leaves one film rate once the side is known.',
        }),
      },
      tables: [
        {
          caption: 'Film rates that give this beat',
          columns: ['Film rate', 'Flash rate', 'Sum', 'If you speed the projector up'],
          rows: candidates.slice(0, LONGEST_TABLE).map((one) => ({
            cells: [
              formatQuantity(one.filmFps, 'fps', 5),
              formatQuantity(one.flashRateHz, 'Hz', 5),
              `${one.multiple} × ${formatNumber(cameraFps, 5)} ${one.side < 0 ? '−' : '+'} ${formatNumber(beatHz, 4)}`,
              howToTell(one, inputs.pictureWay === 'turned'),
            ],
          })),
        },
      ],
      cautions,
    };
  },
  working({ beatPulses, beatSeconds, countErrorPulses, cameraFps, flashesPerFrame }, { answers }) {
    const { beatHz, errorHz } = countedBeat(beatPulses, beatSeconds, countErrorPulses);
    return [
      {
        words: 'Pulses divided by time gives the beat.',
        sum: `${formatNumber(beatPulses, 6)} ÷ ${formatQuantity(beatSeconds, 's', 4)} = ${answers['beatHz']?.text ?? ''}`,
      },
      {
        words:
          'The flash rate lies that far above or below a multiple m of the camera rate; divided by the flashes per film frame it gives the film rate.',
        sum: `f = (m × ${formatNumber(cameraFps, 5)} ± ${formatNumber(beatHz, 4)}) ÷ ${flashesPerFrame}, m = 0, 1, 2 …`,
      },
      {
        words: 'The error of the count goes into the film rate through the same division.',
        sum: `${formatNumber(errorHz, 3)} ÷ ${flashesPerFrame} = ${answers['errorFps']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'Set a short exposure for this test, so that the beat is strong; at a matched exposure time there is no beat to count.',
    'Run the lamp on an empty gate or a scrap loop, never on the customer’s film standing still.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
