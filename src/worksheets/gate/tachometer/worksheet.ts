import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  tachometerErrorFps,
  tachometerFilmFps,
  tachometerReading,
} from '../../../core/gate/tachometer.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { FILM_RATE } from '../../machine/rate-ranges.ts';

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
      help: 'Reflecting marks that pass the instrument in one turn. Enter 1 if the number is already set on the instrument, or if it touches the shaft.',
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
      help: 'In the unit of the reading. If the last digit jumps about, enter by how much.',
    },
    accuracyPercent: {
      kind: 'quantity',
      label: 'Accuracy of the instrument',
      unit: 'percent',
      minimum: 0,
      maximum: 50,
      default: '0.05',
      accepted: '0.05 %',
      help: 'Per cent of the reading, from its data sheet. Enter 0 for a crystal-controlled instrument that you trust.',
    },
    wantedFps: {
      ...FILM_RATE,
      label: 'Wanted film rate',
      default: '16 2/3',
      accepted: '16 2/3 or 18',
      help: 'The film rate that you want to set.',
      bench: 'projector.filmFps',
    },
  },
  model:
    'The film rate is the reading per second, divided by the marks on the shaft and by the shaft turns for one film frame. Exact while nothing slips between shaft and claw. The error adds the accuracy of the instrument and one step of its last digit, because both can err the same way; it does not cover a speed that wanders while you look.',
  answers: {
    filmFps: 'Film rate',
    errorFps: 'Give or take',
    errorPercent: 'That is',
    fasterPercent: 'Faster than wanted by',
    wantedReading: 'Reading at the wanted rate',
  },
  find({
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
    const perSecond = readingUnit === 'perMinute' ? reading / 60 : reading;
    return {
      turnsPerSecond: perSecond / marksPerTurn,
      filmFps,
      errorFps,
      wantedReading: tachometerReading(wantedFps, readingUnit, marksPerTurn, turnsPerFrame),
      fasterPercent: (filmFps / wantedFps - 1) * 100,
      isOnRate: Math.abs(filmFps - wantedFps) <= errorFps,
    };
  },
  outcome({ filmFps, errorFps, fasterPercent, wantedReading, isOnRate }, { readingUnit }) {
    const measured = `The film runs at ${formatQuantity(filmFps, 'fps', 4)}, give or take ${formatNumber(errorFps, 2)}`;
    const sentence = isOnRate
      ? `${measured}: on the wanted rate as far as this reading can tell.`
      : `${measured}: ${formatNumber(Math.abs(fasterPercent), 2)} % ${fasterPercent > 0 ? 'faster' : 'slower'} than wanted.`;
    return {
      verdict: { level: isOnRate ? 'good' : 'care', sentence },
      answers: {
        filmFps: quantity(filmFps, 'fps', 5),
        errorFps: quantity(errorFps, 'fps', 2),
        errorPercent: quantity((errorFps / filmFps) * 100, 'percent', 2),
        fasterPercent: quantity(fasterPercent, 'percent', 3, {
          note: 'With a minus sign the film runs slower than wanted.',
        }),
        wantedReading: quantity(wantedReading, readingUnit === 'perMinute' ? 'rpm' : 'Hz', 5),
      },
    };
  },
  working({ turnsPerSecond }, told, values) {
    const reading = formatNumber(values.reading, 6);
    const seconds = values.readingUnit === 'perMinute' ? ' ÷ 60' : '';
    const turns = formatNumber(turnsPerSecond, 5);
    return [
      {
        words:
          'The reading per second, divided by the marks, is the number of shaft turns per second.',
        sum: `${reading}${seconds} ÷ ${values.marksPerTurn} = ${turns} turns/s`,
      },
      {
        words: 'Divided by the turns for one film frame it is the film rate.',
        sum: `${turns} ÷ ${formatNumber(values.turnsPerFrame, 5)} = ${told('filmFps')}`,
      },
      {
        words:
          'The reading may be out by its accuracy and by one step of the last digit; the film rate is out by the same share.',
        sum: `(${reading} × ${formatNumber(values.accuracyPercent, 4)} % + ${formatNumber(values.resolution, 4)}) ÷ ${reading} = ${told('errorPercent')}`,
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
