import { derived, remembered, type Gauge } from './gauge.ts';

/**
 * Standard 8, also called Regular 8 or Double 8, in the standards 8 mm type R: one half of a slit
 * 16 mm film.
 *
 * @source smpte-239-2004 (pitches); wheeler-1953 (picture); others as marked
 */
export const typeR: Gauge = {
  id: '8mm-type-r',
  name: 'Standard 8',
  filmWidth: derived(7.975, 'Half of 15.95 mm; the slit width of the standard is from memory'),
  perforationsPerFrame: 1,
  pitch: {
    long: {
      millimetres: 3.81,
      inches: 0.15,
      source: 'smpte-239-2004',
      status: 'seen',
      hundredPitches: derived(381, '100 × 0.1500 in'),
    },
    short: {
      millimetres: 3.802,
      inches: 0.1497,
      source: 'smpte-239-2004',
      status: 'seen',
      hundredPitches: derived(380.238, '100 × 0.1497 in'),
    },
  },
  framesPerFoot: { frames: 80, source: 'gale-making-better-movies', status: 'seen' },
  perforation: {
    width: remembered(1.829, 'The 16 mm hole; table of SMPTE 239 and ISO 486 not read'),
    height: remembered(1.27, 'The 16 mm hole; table of SMPTE 239 and ISO 486 not read'),
    edgeDistance: remembered(0.9, 'SMPTE 239, not read'),
    positions: ['one-edge-at-frame-line'],
    positionOrigin: {
      source: 'from-memory',
      status: 'memory',
      note: 'Beside the line between two pictures',
    },
  },
  cameraPicture: [
    { widthMillimetres: 4.8, heightMillimetres: 3.51, source: 'wheeler-1953', status: 'seen' },
    {
      widthMillimetres: 4.88,
      heightMillimetres: 3.68,
      source: 'from-memory',
      status: 'memory',
      note: 'Later standards SMPTE 231 and ISO 74, not read',
    },
  ],
  projectedPicture: [
    {
      widthMillimetres: 4.37,
      heightMillimetres: 3.28,
      source: 'from-memory',
      status: 'memory',
      note: 'SMPTE 234 and ISO 74, not read',
    },
  ],
  nativeRates: [
    {
      filmFps: 16,
      use: 'silent, the rule before about 1965; with a stripe 16 to 18',
      sounds: ['none', 'magnetic'],
      source: 'encyclopaedia-8mm',
      status: 'secondary',
      note: 'Rate of striped film: practice, no source',
    },
    {
      filmFps: 18,
      use: 'silent, later cameras; with a stripe 16 to 18',
      sounds: ['none', 'magnetic'],
      source: 'encyclopaedia-8mm',
      status: 'secondary',
      note: 'Rate of striped film: practice, no source',
    },
  ],
  soundTracks: [
    {
      system: 'magnetic',
      framesAhead: 56,
      source: 'hobby-sound-article',
      status: 'secondary',
      width: remembered(0.76, 'Stripe outside the perforations'),
      place: { edge: 'perforated', edgeDistanceMillimetres: 0.05 },
    },
  ],
};
