import { filmStrip, type StripSound } from '../core/film-strip.ts';
import type { CandidateId } from '../core/gauge-identification.ts';
import type { GaugeId } from '../core/gauges/gauge.ts';
import type { FilmGaugesData } from './picture-data.ts';

interface Shown {
  readonly gauge: GaugeId;
  readonly sound: StripSound;
  readonly label: string;
  readonly words: string;
}

/** Gauges of this bench in order of width; 35 mm is too wide to stand beside them. */
const SHOWN: readonly Shown[] = [
  {
    gauge: '8mm-type-r',
    sound: 'none',
    label: '8\u00a0mm\u00a0R',
    words: '8 mm type R has large holes at the line between two pictures',
  },
  {
    gauge: 'super-8',
    sound: 'none',
    label: 'Super\u00a08',
    words: 'Super 8 has small holes beside the middle of a picture',
  },
  {
    gauge: '9.5mm',
    sound: 'none',
    label: '9.5\u00a0mm',
    words: '9.5 mm has one hole in the middle between two pictures',
  },
  {
    gauge: '16mm',
    sound: 'none',
    label: '16\u00a0mm',
    words: 'silent 16 mm has holes along both edges',
  },
  {
    gauge: 'super-16',
    sound: 'none',
    label: 'Super\u00a016',
    words: 'Super 16 has holes along one edge and a picture that reaches almost to the other',
  },
];

/**
 * The gauges side by side at one scale, those that fit marked.
 *
 * @param fitting  gauges to mark
 */
export function gaugesSideBySide(fitting: readonly CandidateId[]): FilmGaugesData {
  const marked = SHOWN.filter(({ gauge }) => fitting.includes(gauge));
  const names = marked.map(({ label }) => label.replaceAll('\u00a0', ' ')).join(', ');
  return {
    name: 'film-gauges',
    alternative: `Gauges side by side at one scale: ${SHOWN.map(({ words }) => words).join('; ')}.${names === '' ? '' : ` Marked as fitting: ${names}.`}`,
    films: SHOWN.map(({ gauge, sound, label }) => ({
      label,
      isMarked: fitting.includes(gauge),
      film: filmStrip(gauge, sound),
    })),
  };
}
