import type { WoundThickness } from '../../../core/reel/reel-length.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { WorkingStep } from '../../machine/types.ts';
import { woundFilm, type WoundFilm } from './found.ts';
import { inputs } from './inputs.ts';
import { knownDuration, knownQuantity } from './known-answers.ts';

function memoryCautions({ status, note }: WoundThickness): readonly string[] {
  return status === 'memory'
    ? [`The thickness of this film is ${STATUS_WORDS.memory}. ${note ?? ''}.`]
    : [];
}

/** What a length or a diameter has in common: how thick a turn is. */
function thicknessStep({ thickness, likelyThickness }: WoundFilm): WorkingStep {
  const { minimumMillimetres: thin, maximumMillimetres: thick, note } = thickness;
  const range = `A turn of this film is ${formatNumber(thin, 3)} to ${formatNumber(thick, 3)} mm thick`;
  const likely = `${formatNumber(likelyThickness, 4)} mm`;
  return thickness.likelyMillimetres === undefined
    ? {
        words: `${range}; the middle is used. ${note ?? ''}.`,
        sum: `(${formatNumber(thin, 4)} + ${formatNumber(thick, 4)}) ÷ 2 = ${likely}`,
      }
    : { words: `${range}; the likely one is used. ${note ?? ''}.`, sum: likely };
}

export const worksheet = defineWorksheet({
  id: 'reel-length',
  title: 'Length from the reel',
  question: 'How much film is on this reel, without unwinding it?',
  chapter: 'reel/length',
  inputs,
  model:
    'The side of the wound film is a ring, and the film covers it: length = π × (outer² − core²) ÷ (4 × thickness of a turn). The thickness runs from that of the film to that of a loose winding; for film not looked at it runs over every kind in the list. Least and most are worst cases, with both diameters misread in the direction that matters most. Numbers are rounded to what is known.',
  answers: {
    outerDiameterMillimetres: 'Outer diameter, likely',
    leastDiameterMillimetres: 'Diameter, at least',
    mostDiameterMillimetres: 'Diameter, at most',
    lengthMetres: 'Length, likely',
    leastMetres: 'Length, at least',
    mostMetres: 'Length, at most',
    errorPercent: 'The length may be off by',
    frames: 'Frames, likely',
    runningSeconds: 'Running time',
    leastSeconds: 'Running time, at least',
    mostSeconds: 'Running time, at most',
  },
  find: woundFilm,
  outcome({ thickness, pack }, { coreDiameterMillimetres, filmFps }) {
    const cautions = memoryCautions(thickness);
    const millimetres = (value: number): string => formatQuantity(value, 'mm', 3);
    if (pack.known === 'length') {
      const { film, leastMillimetres, likelyMillimetres, mostMillimetres } = pack;
      return {
        verdict: {
          level: 'note',
          sentence: `${formatQuantity(film.millimetres / 1000, 'm', 3)} of film on a core of ${millimetres(coreDiameterMillimetres)} reach ${millimetres(leastMillimetres)} to ${millimetres(mostMillimetres)} across.`,
        },
        answers: {
          outerDiameterMillimetres: quantity(likelyMillimetres, 'mm', 3),
          leastDiameterMillimetres: quantity(leastMillimetres, 'mm', 3),
          mostDiameterMillimetres: quantity(mostMillimetres, 'mm', 3),
          runningSeconds: duration(film.seconds),
        },
        cautions,
      };
    }
    const { least, likely, most, error, errorPercent } = pack;
    const metresOff = error.millimetres / 1000;
    const answers = {
      lengthMetres: knownQuantity(likely.millimetres / 1000, metresOff, 'm'),
      leastMetres: knownQuantity(least.millimetres / 1000, metresOff, 'm', 'down'),
      mostMetres: knownQuantity(most.millimetres / 1000, metresOff, 'm', 'up'),
      errorPercent: quantity(errorPercent, 'percent', 2),
      frames: knownQuantity(likely.frames, error.frames, 'frames'),
      runningSeconds: {
        ...knownDuration(likely.seconds, error.seconds),
        note: 'For the likely length.',
      },
      leastSeconds: knownDuration(least.seconds, error.seconds, 'down'),
      mostSeconds: knownDuration(most.seconds, error.seconds, 'up'),
    };
    return {
      verdict: {
        level: errorPercent > 15 ? 'care' : 'note',
        sentence: `The reel holds about ${answers.lengthMetres.text}, between ${answers.leastMetres.text} and ${answers.mostMetres.text}; that is about ${answers.runningSeconds.text} at ${formatQuantity(filmFps, 'fps', 4)}.`,
      },
      answers,
      cautions,
    };
  },
  working(found, told, values) {
    const mean = formatNumber(found.likelyThickness, 4);
    const core = formatNumber(values.coreDiameterMillimetres, 4);
    if (found.pack.known === 'length') {
      return [
        thicknessStep(found),
        {
          words: 'The same ring formula, solved for the outer diameter.',
          sum: `√(${core}² + 4 × ${mean} × ${formatNumber(found.pack.film.millimetres, 5)} ÷ π) mm = ${told('outerDiameterMillimetres')}`,
        },
      ];
    }
    return [
      thicknessStep(found),
      {
        words: 'The area of the ring divided by the thickness gives the length.',
        sum: `π × (${formatNumber(values.outerDiameterMillimetres, 4)}² − ${core}²) mm² ÷ (4 × ${mean} mm) ≈ ${told('lengthMetres')}`,
      },
      {
        words:
          'Smallest outer, largest core and thickest winding give the least; the other way round the most.',
        sum: `${told('leastMetres')} to ${told('mostMetres')}`,
      },
    ];
  },
  cautions: [
    'Measure the film, not the reel: a reel is seldom full.',
    'Add the leader: 3 m at each end is longer than the path of most machines, and it needs room on the reel too.',
    'Do not squeeze or pull a loose winding tight to measure it; layers that rub scratch each other.',
  ],
  sources: [
    'arithmetic',
    'international-projectionist-1958',
    'theatre-catalog-1953',
    'data-sheet-h-1-5242-2008',
    'nypl-ami-film-2020',
    'from-memory',
    'common-practice',
  ],
});
