import { filmStrip, type StripSound } from '../../core/reel/film-strip.ts';
import type { CandidateId } from '../../core/reel/gauge-identification.ts';
import type { GaugeId, PerforationPosition } from '../../core/reel/gauges/gauge.ts';
import type { FilmBesideOthers, FilmGaugesData } from '../machine/picture-data.ts';

interface Shown {
  readonly gauge: GaugeId;
  readonly sound: StripSound;
  readonly position: PerforationPosition;
  /** Lines under the strip, ten letters at most. */
  readonly label: readonly string[];
  readonly words: string;
}

/** Films of this bench, narrow ones first; 35 mm stands apart. */
const ROWS: readonly (readonly Shown[])[] = [
  [
    {
      gauge: '8mm-type-r',
      sound: 'none',
      position: 'one-edge-at-frame-line',
      label: ['Standard', '8'],
      words: 'Standard 8 has large holes at the line between two pictures',
    },
    {
      gauge: '8mm-type-r',
      sound: 'magnetic',
      position: 'one-edge-at-frame-line',
      label: ['Standard', '8, stripe'],
      words: 'the magnetic stripe of Standard 8 lies outside the holes',
    },
    {
      gauge: 'super-8',
      sound: 'none',
      position: 'one-edge-beside-picture',
      label: ['Super\u00a08'],
      words: 'Super 8 has small holes beside the middle of a picture',
    },
    {
      gauge: 'super-8',
      sound: 'magnetic',
      position: 'one-edge-beside-picture',
      label: ['Super\u00a08,', 'stripe'],
      words: 'the magnetic stripe of Super 8 lies on the edge without holes',
    },
    {
      gauge: '9.5mm',
      sound: 'none',
      position: 'centre-at-frame-line',
      label: ['9.5\u00a0mm'],
      words: '9.5 mm has one hole in the middle between two pictures',
    },
  ],
  [
    {
      gauge: '16mm',
      sound: 'none',
      position: 'both-edges-at-frame-line',
      label: ['16\u00a0mm,', 'two rows'],
      words: '16 mm with two rows of holes',
    },
    {
      gauge: '16mm',
      sound: 'none',
      position: 'one-edge-at-frame-line',
      label: ['16\u00a0mm,', 'one row'],
      words: '16 mm with one row of holes and nothing on the other edge, often silent',
    },
    {
      gauge: '16mm',
      sound: 'optical',
      position: 'one-edge-at-frame-line',
      label: ['16\u00a0mm,', 'sound track'],
      words: '16 mm with one row of holes and an optical sound track on the other edge',
    },
    {
      gauge: 'super-16',
      sound: 'none',
      position: 'one-edge-at-frame-line',
      label: ['Super\u00a016'],
      words:
        'Super 16 with one row of holes and a picture that runs into the place of the sound track',
    },
  ],
];

const APART: Shown = {
  gauge: '35mm',
  sound: 'none',
  position: 'both-edges-four-per-frame',
  label: ['35\u00a0mm:', 'not on this bench'],
  words: '35 mm, very wide, with four holes to a picture along both edges: not on this bench',
};

/**
 * The films that fit, side by side at one scale; all films of the bench where none fits, so that the
 * worker can look for a likeness.
 *
 * @param fitting   gauges that the film may be
 * @param position  place of the holes, where it was looked at: only films with it fit
 */
export function gaugesSideBySide(
  fitting: readonly CandidateId[],
  position?: PerforationPosition,
): FilmGaugesData {
  const fits = (shown: Shown): boolean =>
    fitting.includes(shown.gauge) && (position === undefined || position === shown.position);
  const isNoneFitting = ![...ROWS.flat(), APART].some(fits);
  const isShown = (shown: Shown): boolean => isNoneFitting || fits(shown);
  const drawn = (shown: Shown): FilmBesideOthers => ({
    label: shown.label,
    isMarked: fits(shown),
    film: filmStrip(shown.gauge, shown.sound, shown.position),
  });
  const rows = ROWS.map((row) => row.filter(isShown)).filter((row) => row.length > 0);
  const words = [...rows.flat(), ...(isShown(APART) ? [APART] : [])].map((shown) => shown.words);
  return {
    name: 'film-gauges',
    alternative: `${isNoneFitting ? 'Films side by side at one scale' : 'Films that fit, at one scale'}: ${words.join('; ')}.`,
    rows: rows.map((row) => row.map(drawn)),
    ...(isShown(APART) ? { apart: drawn(APART) } : {}),
  };
}
