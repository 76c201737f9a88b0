import { requireInterval } from '../../../quantity/errors.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  candidateSpacingFps,
  countedBeat,
  filmRatesFromBeat,
  type BeatCandidate,
} from '../../../core/gate/speed-from-beat.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ResultTable, ValuesOf } from '../../machine/types.ts';
import { inputs } from './inputs.ts';

type Values = ValuesOf<typeof inputs>;
type Found = ReturnType<typeof findRates>;

/** Candidates printed in the table; a wide window at a slow camera holds many more. */
const LONGEST_TABLE = 20;

function findRates(values: Values) {
  const { beatPulses, beatSeconds, cameraFps, flashesPerFrame } = values;
  // More pulses than half the camera frames cannot be seen as a beat: it would show as a slower one.
  requireInterval('beatPulses', beatPulses, {
    minimum: 0,
    maximum: (cameraFps / 2) * beatSeconds,
    unit: 'pulses',
  });
  const { beatHz, errorHz } = countedBeat(beatPulses, beatSeconds, values.countErrorPulses);
  const candidates = filmRatesFromBeat(
    beatHz,
    cameraFps,
    flashesPerFrame,
    values.slowestFps,
    values.fastestFps,
    values.observation,
    values.pictureWay === 'turned',
  );
  return {
    beatHz,
    errorHz,
    errorFps: errorHz / flashesPerFrame,
    candidates,
    /** The film rate, when nothing else fits. */
    only: candidates.length === 1 ? candidates[0] : undefined,
    spacingFps: candidateSpacingFps(cameraFps, flashesPerFrame),
  };
}

function howToTell({ side }: BeatCandidate, isTurnedOver: boolean): string {
  if (side === 0) return 'the beat starts, whichever way you nudge';
  const bands = side > 0 !== isTurnedOver ? 'climb' : 'sink';
  return side > 0 ? `the beat rises; bands ${bands}` : `the beat falls; bands ${bands}`;
}

function verdictFor(
  { candidates, only, errorFps }: Found,
  { observation }: Values,
): Outcome['verdict'] {
  if (candidates.length === 0) {
    return {
      level: 'stop',
      sentence:
        'No film rate in this window gives that beat: check the flashes per frame and the window.',
    };
  }
  if (only !== undefined) {
    return {
      level: 'good',
      sentence: `The film runs at ${formatQuantity(only.filmFps, 'fps', 5)}, give or take ${formatNumber(errorFps, 2)}.`,
    };
  }
  return {
    level: 'care',
    sentence:
      observation === 'unknown'
        ? `${candidates.length} film rates fit this beat: speed the projector up a little and watch whether the beat rises or falls.`
        : `${candidates.length} film rates fit this beat: narrow the window with a stopwatch.`,
  };
}

function ratesTable({ candidates, beatHz }: Found, { cameraFps, pictureWay }: Values): ResultTable {
  return {
    caption: 'Film rates that give this beat',
    columns: ['Film rate', 'Flash rate', 'Sum', 'If you speed the projector up'],
    rows: candidates.slice(0, LONGEST_TABLE).map((one) => ({
      cells: [
        formatQuantity(one.filmFps, 'fps', 5),
        formatQuantity(one.flashRateHz, 'Hz', 5),
        `${one.multiple} × ${formatNumber(cameraFps, 5)} ${one.side < 0 ? '−' : '+'} ${formatNumber(beatHz, 4)}`,
        howToTell(one, pictureWay === 'turned'),
      ],
    })),
  };
}

function cautionsFor({ beatHz, errorHz, candidates }: Found): readonly string[] {
  return [
    ...(beatHz > 0 && beatHz <= errorHz
      ? ['The beat is no larger than the error of the count: count over a longer time.']
      : []),
    ...(candidates.length > LONGEST_TABLE
      ? [`Only the slowest ${LONGEST_TABLE} of ${candidates.length} film rates are listed.`]
      : []),
  ];
}

export const worksheet = defineWorksheet({
  id: 'speed-from-beat',
  title: 'Film rate from the beat',
  question: 'Which film rates fit the beat that the recording shows?',
  chapter: 'gate/measuring-speed',
  inputs,
  model:
    'The beat is the difference between the flash rate and the nearest multiple of the camera rate, so each multiple gives two film rates, one above and one below. Valid for equal, equally spaced blades and a steady lamp; unequal blades also beat at the film rate itself, and a lamp on the mains beats without any film moving.',
  answers: {
    filmFps: 'Film rate',
    beatHz: 'Beat',
    errorFps: 'Error of each film rate',
    candidateCount: 'Film rates that fit',
    spacingFps: 'Spacing on one side',
  },
  find: findRates,
  outcome(found, values) {
    const { beatHz, errorFps, candidates, only, spacingFps } = found;
    return {
      verdict: verdictFor(found, values),
      answers: {
        ...(only === undefined ? {} : { filmFps: quantity(only.filmFps, 'fps', 5) }),
        beatHz: quantity(beatHz, 'Hz', 4),
        errorFps: quantity(errorFps, 'fps', 2),
        candidateCount: quantity(candidates.length, 'one'),
        spacingFps: quantity(spacingFps, 'fps', 4, {
          note: 'A window narrower than this leaves one film rate once the side is known.',
        }),
      },
      tables: [ratesTable(found, values)],
      cautions: cautionsFor(found),
    };
  },
  working({ beatHz, errorHz }, told, { beatPulses, beatSeconds, cameraFps, flashesPerFrame }) {
    return [
      {
        words: 'Pulses divided by time gives the beat.',
        sum: `${formatNumber(beatPulses, 6)} ÷ ${formatQuantity(beatSeconds, 's', 4)} = ${told('beatHz')}`,
      },
      {
        words:
          'The flash rate lies that far above or below a multiple m of the camera rate; divided by the flashes per film frame it gives the film rate.',
        sum: `f = (m × ${formatNumber(cameraFps, 5)} ± ${formatNumber(beatHz, 4)}) ÷ ${flashesPerFrame}, m = 0, 1, 2 …`,
      },
      {
        words: 'The error of the count goes into the film rate through the same division.',
        sum: `${formatNumber(errorHz, 3)} ÷ ${flashesPerFrame} = ${told('errorFps')}`,
      },
    ];
  },
  cautions: [
    'Set a short exposure for this test, so that the beat is strong; at a matched exposure time there is no beat to count.',
    'Run the lamp on an empty gate or a scrap loop, never on the customer’s film standing still.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
