import { derived, remembered, seen, type Gauge } from './gauge.ts';

/**
 * 35 mm, for contrast only: four holes to the picture along both edges. Before 1952, and in Europe
 * somewhat later, it may be nitrate.
 *
 * @source smpte-102-2002 (width); pritchard-glossary (pitch); others as marked
 */
export const thirtyFive: Gauge = {
  id: '35mm',
  name: '35 mm',
  filmWidth: seen(34.975, 'smpte-102-2002', { toleranceMillimetres: 0.025 }),
  perforationsPerFrame: 4,
  pitch: {
    long: {
      millimetres: 4.75,
      inches: 0.187,
      source: 'pritchard-glossary',
      status: 'seen',
      hundredPitches: derived(475, '100 × 4.750 mm'),
    },
    short: {
      millimetres: 4.74,
      inches: 0.1866,
      source: 'encyclopaedia-film-perforations',
      status: 'secondary',
      hundredPitches: derived(474, '100 × 4.740 mm'),
    },
  },
  framesPerFoot: {
    frames: 16,
    source: 'de-encyclopaedia-filmschritt',
    status: 'secondary',
    note: 'A convention: the step of 19.000 mm gives 16.04',
  },
  perforation: {
    width: remembered(2.794, 'Print perforation; others are 1.854 mm high'),
    height: remembered(1.981, 'Print perforation; others are 1.854 mm high'),
    edgeDistance: remembered(2.01, 'Not read'),
    positions: ['both-edges-four-per-frame'],
    positionOrigin: { source: 'pritchard-glossary', status: 'seen' },
  },
  cameraPicture: [
    {
      widthMillimetres: 24.89,
      heightMillimetres: 18.67,
      source: 'from-memory',
      status: 'memory',
      note: 'Silent full frame',
    },
  ],
  projectedPicture: [],
  nativeRates: [
    {
      filmFps: 16,
      use: 'silent, in practice very varied',
      sounds: ['none'],
      source: 'cinematographic-annual-1931',
      status: 'seen',
    },
    {
      filmFps: 24,
      use: 'sound',
      sounds: ['optical', 'magnetic'],
      source: 'cinematographic-annual-1931',
      status: 'seen',
    },
  ],
  soundTracks: [
    {
      system: 'optical',
      framesAhead: 20,
      source: 'dilettantes-dictionary',
      status: 'secondary',
      note: 'For editing; some threading rules say 21',
    },
  ],
};
