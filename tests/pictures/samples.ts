import type {
  BandsData,
  CurveData,
  FilmGaugesData,
  FilmStripData,
  GateLightData,
  RangeBarsData,
  RepeatPatternData,
  ShutterDiscData,
  SoundStripData,
  WholeFramesData,
} from '../../src/worksheets/machine/picture-data.ts';

/** Three film frames, one flash each, filmed twice. */
export const gateLight: GateLightData = {
  name: 'gate-light',
  alternative: 'Three flashes and two exposures.',
  spanSeconds: 0.12,
  light: [
    { seconds: 0, level: 0 },
    { seconds: 0.01, level: 0 },
    { seconds: 0.01, level: 1 },
    { seconds: 0.03, level: 1 },
    { seconds: 0.03, level: 0 },
    { seconds: 0.12, level: 0 },
  ],
  filmFrameStarts: [0, 0.04, 0.08],
  exposures: [
    { startSeconds: 0.01, endSeconds: 0.03, share: 1.5 },
    { startSeconds: 0.07, endSeconds: 0.09, share: 0.5 },
  ],
};

/** Strong bands: 54 Hz filmed at 25 frames/s moves on by 0.16 of a period with each frame. */
export const bands: BandsData = {
  name: 'bands',
  alternative: 'One light and one dark band.',
  exposureByPhase: Array.from(
    { length: 24 },
    (_, step) => 1 + 0.8 * Math.sin((step * Math.PI) / 12),
  ),
  periodsDownPicture: 0.864,
  phaseStepPerFrame: 0.16,
  cameraFps: 25,
};

export const wholeFrames: WholeFramesData = {
  name: 'whole-frames',
  alternative: 'Two whole frames and one blended.',
  cameraFrames: [
    { filmFrame: 1, purity: 1 },
    { filmFrame: 2, purity: 0.75, otherFilmFrame: 1 },
    { filmFrame: 2, purity: 1 },
  ],
};

export const repeatPattern: RepeatPatternData = {
  name: 'repeat-pattern',
  alternative: 'Threes and twos.',
  repeats: [3, 3, 3, 3, 2, 3, 3, 3, 2],
};

/** Invented round dimensions, mm. */
export const filmStrip: FilmStripData = {
  name: 'film-strip',
  alternative: 'Three frames of film with a hole beside each.',
  widthMillimetres: 8,
  pitchMillimetres: 4,
  perforations: [
    { leftMillimetres: 0.5, widthMillimetres: 1, heightMillimetres: 1.2, centreMillimetres: 2 },
  ],
  picture: {
    leftMillimetres: 2,
    widthMillimetres: 5,
    heightMillimetres: 3.6,
    centreMillimetres: 2,
  },
  stripes: [{ system: 'magnetic', leftMillimetres: 7.2, widthMillimetres: 0.7 }],
};

/** A narrow and a wide film, the narrow one marked, and a very wide one apart. */
export const filmGauges: FilmGaugesData = {
  name: 'film-gauges',
  alternative: 'Two films side by side and one apart.',
  rows: [
    [{ label: ['narrow', 'film'], isMarked: true, film: filmStrip }],
    [
      {
        label: ['wide'],
        isMarked: false,
        film: { ...filmStrip, widthMillimetres: 16, pitchMillimetres: 7.5, stripes: [] },
      },
      {
        label: ['with track'],
        isMarked: false,
        film: {
          ...filmStrip,
          widthMillimetres: 16,
          pitchMillimetres: 7.5,
          stripes: [{ system: 'optical', leftMillimetres: 13.6, widthMillimetres: 1.8 }],
        },
      },
    ],
  ],
  apart: {
    label: ['widest', 'not here'],
    isMarked: false,
    film: { ...filmStrip, widthMillimetres: 35, pitchMillimetres: 19, stripes: [] },
  },
};

export const curve: CurveData = {
  name: 'curve',
  alternative: 'Ripple falls to nothing at 18 frames/s and rises again.',
  xLabel: 'film rate, frames/s',
  yLabel: 'ripple, %',
  curves: [
    {
      label: '1/54 s',
      points: [
        { x: 16, y: 20 },
        { x: 18, y: 0 },
        { x: 20, y: 20 },
      ],
    },
    {
      label: 'limit',
      points: [
        { x: 16, y: 2 },
        { x: 20, y: 2 },
      ],
    },
  ],
  marks: [{ x: 18, label: 'your setting' }],
};

/** Two narrow blades and a wide pulldown blade. */
export const shutterDisc: ShutterDiscData = {
  name: 'shutter-disc',
  alternative: 'Three blades, the last one wider.',
  sectors: [
    { degrees: 60, kind: 'opening' },
    { degrees: 50, kind: 'blade' },
    { degrees: 60, kind: 'opening' },
    { degrees: 50, kind: 'blade' },
    { degrees: 60, kind: 'opening' },
    { degrees: 80, kind: 'pulldown-blade' },
  ],
};

/** Sound 18 frames ahead, read 2 frames too far along. */
export const soundStrip: SoundStripData = {
  name: 'sound-strip',
  alternative: 'The sound lies 18 frames along the film and is read 2 frames late.',
  separationFrames: 18,
  separationText: 'to its sound: 18 frames = 1 s',
  readFrames: 20,
  readText: 'sound head',
  gapText: 'sound 2 frames late',
};

/** Ten stops of film, two exposures of eight. */
export const rangeBars: RangeBarsData = {
  name: 'range-bars',
  alternative: 'Two exposures hold the film together.',
  unit: 'stops',
  whole: { label: 'film', from: 0, to: 10 },
  parts: [
    { label: 'exposure 1', from: 0, to: 8 },
    { label: 'exposure 2', from: 3, to: 11 },
  ],
  missedText: 'lost in this exposure',
};
