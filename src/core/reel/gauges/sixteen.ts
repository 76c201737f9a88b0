import { derived, seen, type Gauge } from './gauge.ts';

const AMERICAN = 'asa-z22-5-1947';

/**
 * 16 mm: holes at the frame line, along one edge or both. Neither proves anything about sound: film
 * with one row is often silent, and film with two can carry a stripe at its edge.
 *
 * @source asa-z22-5-1947 (film and holes); smpte-101-2003 (width, edge stripe); iso-26-1993 (rates); others as marked
 */
export const sixteen: Gauge = {
  id: '16mm',
  name: '16 mm',
  filmWidth: seen(15.95, 'smpte-101-2003', {
    note: 'Reference dimension; the 1947 standard prints 15.98 ± 0.03 mm',
  }),
  perforationsPerFrame: 1,
  pitch: {
    long: {
      millimetres: 7.62,
      inches: 0.3,
      toleranceMillimetres: 0.013,
      source: AMERICAN,
      status: 'seen',
      hundredPitches: seen(762, AMERICAN, { toleranceMillimetres: 0.76 }),
    },
    short: {
      millimetres: 7.605,
      inches: 0.2994,
      source: 'smpte-16-on-35',
      status: 'seen',
      hundredPitches: derived(760.476, '100 × 0.2994 in'),
    },
  },
  framesPerFoot: { frames: 40, source: 'gale-making-better-movies', status: 'seen' },
  perforation: {
    width: seen(1.83, AMERICAN, { toleranceMillimetres: 0.01 }),
    height: seen(1.27, AMERICAN, { toleranceMillimetres: 0.01 }),
    edgeDistance: seen(0.91, AMERICAN, { toleranceMillimetres: 0.05 }),
    positions: ['both-edges-at-frame-line', 'one-edge-at-frame-line'],
    positionOrigin: {
      source: 'iso-69-1998',
      status: 'seen',
      note: 'One or two rows; that they lie at the frame line is from memory',
    },
  },
  cameraPicture: [
    {
      widthMillimetres: 10.26,
      heightMillimetres: 7.49,
      source: 'from-memory',
      status: 'memory',
      note: 'SMPTE 7, not read',
    },
    {
      widthMillimetres: 10.41,
      heightMillimetres: 7.47,
      source: 'wheeler-1953',
      status: 'seen',
      note: 'Older standard',
    },
  ],
  projectedPicture: [
    {
      widthMillimetres: 9.65,
      heightMillimetres: 7.21,
      source: 'video-compression-guide',
      status: 'secondary',
      note: 'The height of 7.21 mm is printed in jsmpte-56-1951 too',
    },
  ],
  nativeRates: [
    {
      filmFps: 16,
      toleranceFps: 0.5,
      use: 'silent, older cameras',
      sounds: ['none'],
      source: 'iso-26-1993',
      status: 'seen',
    },
    {
      filmFps: 18,
      toleranceFps: 1,
      use: 'silent, later; preferred by the standard',
      sounds: ['none'],
      source: 'iso-26-1993',
      status: 'seen',
    },
    {
      filmFps: 24,
      toleranceFps: 1,
      use: 'sound',
      sounds: ['optical', 'magnetic'],
      source: 'iso-26-1993',
      status: 'seen',
      note: 'A stripe laid on a silent film later can hold 16 or 18: practice, no source',
    },
    {
      filmFps: 25,
      use: 'television in 50 Hz countries',
      sounds: ['optical', 'magnetic'],
      source: 'common-practice',
      status: 'practice',
    },
  ],
  soundTracks: [
    {
      system: 'optical',
      framesAhead: 26,
      source: 'smpte-41',
      status: 'seen',
      note: '± ½ frame; the ½ is restored from memory',
      width: seen(1.8, 'offenhauser-16mm', {
        note: 'Scanned width; centre line 1.47 mm from the edge',
      }),
      place: { edge: 'far', edgeDistanceMillimetres: 0.57 },
    },
    {
      system: 'magnetic',
      framesAhead: 28,
      source: 'from-memory',
      status: 'memory',
      note: 'SMPTE 112, not read',
      width: derived(2.54, '100 mil, as in the titles of SMPTE 87 and 112'),
      place: { edge: 'far', edgeDistanceMillimetres: 0 },
    },
  ],
};
