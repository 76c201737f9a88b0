import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  tachometerErrorFps,
  tachometerFilmFps,
  tachometerReading,
  type ReadingUnit,
} from '../../../core/gate/tachometer.ts';
import { quantityAnswer } from '../../machine/labelled-answers.ts';
import { defineWorksheet, type Answer } from '../../machine/types.ts';

function readingAnswer(label: string, reading: number, unit: ReadingUnit): Answer {
  return unit === 'perMinute'
    ? quantityAnswer(label, reading, 'rpm', 5)
    : quantityAnswer(label, reading, 'Hz', 5);
}

export const worksheet = defineWorksheet({
  id: 'tachometer',
  title: 'Film rate from a tachometer',
  question: 'How fast does the film really run, and what should the tachometer show?',
  chapter: 'gate/measuring-speed',
  inputs: {
    reading: {
      kind: 'quantity',
      label: 'Reading',
      unit: 'one',
      minimum: 0.1,
      maximum: 1_000_000,
      default: '1000',
      accepted: '1000 or 16.7',
      help: 'What the instrument shows while film runs through the warm machine. With a strobe: the fastest flash rate at which each mark stands still and is seen once.',
    },
    readingUnit: {
      kind: 'choice',
      label: 'The reading is',
      options: {
        perMinute: 'per minute (rev/min, flashes/min)',
        perSecond: 'per second (rev/s, Hz)',
      },
      default: 'perMinute',
      help: 'Look for the unit on the display.',
    },
    marksPerTurn: {
      kind: 'count',
      label: 'Marks on the shaft',
      minimum: 1,
      maximum: 100,
      default: '1',
      accepted: '1',
      help: 'Reflecting marks that pass the instrument in one turn. Say 1 where the instrument has been told the number itself, or touches the shaft.',
    },
    turnsPerFrame: {
      kind: 'quantity',
      label: 'Shaft turns per film frame',
      unit: 'turnsPerFrame',
      minimum: 0.001,
      maximum: 100,
      default: '1',
      accepted: '1, 3 or 1/12',
      help: 'Turn the machine by hand until the claw has moved once, and count the turns of this shaft. A sprocket of 12 teeth, one for each frame, makes 1/12.',
      bench: 'projector.turnsPerFrame',
    },
    resolution: {
      kind: 'quantity',
      label: 'One step of the last digit',
      unit: 'one',
      minimum: 0,
      maximum: 10_000,
      default: '1',
      accepted: '1 or 0.1',
      help: 'In the unit of the reading. If the last digit jumps about, say by how much.',
    },
    accuracyPercent: {
      kind: 'quantity',
      label: 'Accuracy of the instrument',
      unit: 'percent',
      minimum: 0,
      maximum: 50,
      default: '0.05',
      accepted: '0.05 %',
      help: 'Percent of the reading, from its data sheet. Say 0 for a crystal-driven instrument you trust.',
    },
    wantedFps: {
      kind: 'quantity',
      label: 'Wanted film rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '16 2/3',
      accepted: '16 2/3 or 18',
      help: 'The film rate that you want to set.',
      bench: 'projector.filmFps',
    },
  },
  model:
    'The film rate is the reading per second, divided by the marks on the shaft and by the shaft turns for one film frame. Exact while nothing slips between shaft and claw. The error adds the accuracy of the instrument and one step of its last digit, because both can err the same way; it does not cover a speed that wanders while you look.',
  compute({
    reading,
    readingUnit,
    marksPerTurn,
    turnsPerFrame,
    resolution,
    accuracyPercent,
    wantedFps,
  }) {
    const filmFps = tachometerFilmFps(reading, readingUnit, marksPerTurn, turnsPerFrame);
    const errorFps = tachometerErrorFps(
      reading,
      readingUnit,
      marksPerTurn,
      turnsPerFrame,
      resolution,
      accuracyPercent,
    );
    const wantedReading = tachometerReading(wantedFps, readingUnit, marksPerTurn, turnsPerFrame);
    const fasterPercent = (filmFps / wantedFps - 1) * 100;
    const isOnRate = Math.abs(filmFps - wantedFps) <= errorFps;
    const measured = `The film runs at ${formatQuantity(filmFps, 'fps', 4)}, give or take ${formatNumber(errorFps, 2)}`;
    const sentence = isOnRate
      ? `${measured}: on the wanted rate as far as this reading can tell.`
      : `${measured}: ${formatNumber(Math.abs(fasterPercent), 2)} % ${fasterPercent > 0 ? 'faster' : 'slower'} than wanted.`;
    return {
      verdict: { level: isOnRate ? 'good' : 'care', sentence },
      answers: {
        filmFps: quantityAnswer('Film rate', filmFps, 'fps', 5),
        errorFps: quantityAnswer('Give or take', errorFps, 'fps', 2),
        errorPercent: quantityAnswer('That is', (errorFps / filmFps) * 100, 'percent', 2),
        fasterPercent: quantityAnswer('Faster than wanted by', fasterPercent, 'percent', 3, {
          note: 'With a minus sign the film runs slower than wanted.',
        }),
        wantedReading: readingAnswer('Reading at the wanted rate', wantedReading, readingUnit),
      },
    };
  },
  working(
    { reading, readingUnit, marksPerTurn, turnsPerFrame, resolution, accuracyPercent },
    { answers },
  ) {
    const seconds = readingUnit === 'perMinute' ? ' ÷ 60' : '';
    const perSecond = readingUnit === 'perMinute' ? reading / 60 : reading;
    return [
      {
        words:
          'The reading per second, divided by the marks, is the number of shaft turns per second.',
        sum: `${formatNumber(reading, 6)}${seconds} ÷ ${marksPerTurn} = ${formatNumber(perSecond / marksPerTurn, 5)} turns/s`,
      },
      {
        words: 'Divided by the turns for one film frame it is the film rate.',
        sum: `${formatNumber(perSecond / marksPerTurn, 5)} ÷ ${formatNumber(turnsPerFrame, 5)} = ${answers['filmFps']?.text ?? ''}`,
      },
      {
        words:
          'The reading may be out by its accuracy and by one step of the last digit; the film rate is out by the same share.',
        sum: `(${formatNumber(reading, 6)} × ${formatNumber(accuracyPercent, 4)} % + ${formatNumber(resolution, 4)}) ÷ ${formatNumber(reading, 6)} = ${answers['errorPercent']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'Fix marks with the mains plug pulled, and keep hair, sleeves and the instrument’s lead away from turning shafts and belts.',
    'Never point a laser tachometer into the lens, at a mirror or at eye height.',
    'A strobe also freezes the mark at one half, one third … of its rate: start fast and take the fastest rate that shows each mark once.',
    'Flashing light can bring on a seizure in some people: warn those in the room.',
  ],
  sources: ['common-practice'],
});
