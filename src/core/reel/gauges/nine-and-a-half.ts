import { derived, remembered, type Gauge } from './gauge.ts';

/**
 * 9.5 mm: one hole in the middle, between two pictures. No dimension standard was found.
 *
 * @source encyclopaedia-9-5mm (hole, rates); de-encyclopaedia-filmschritt (step); wheeler-1953 (picture)
 */
export const nineAndAHalf: Gauge = {
  id: '9.5mm',
  name: '9.5 mm',
  filmWidth: {
    millimetres: 9.5,
    source: 'encyclopaedia-9-5mm',
    status: 'secondary',
    note: 'Nominal; no tolerance was found',
  },
  perforationsPerFrame: 1,
  pitch: {
    long: {
      millimetres: 7.54,
      source: 'de-encyclopaedia-filmschritt',
      status: 'secondary',
      note: 'The only pitch known',
      hundredPitches: derived(754, '100 × 7.540 mm'),
    },
  },
  framesPerFoot: {
    frames: 40,
    source: 'de-encyclopaedia-filmschritt',
    status: 'secondary',
    note: 'A convention: the step gives 40.42',
  },
  perforation: {
    width: remembered(2.4, 'No standard found; measure it'),
    height: remembered(1, 'No standard found; measure it'),
    positions: ['centre-at-frame-line'],
    positionOrigin: { source: 'encyclopaedia-9-5mm', status: 'secondary' },
  },
  cameraPicture: [
    { widthMillimetres: 8.5, heightMillimetres: 6.5, source: 'wheeler-1953', status: 'seen' },
  ],
  projectedPicture: [
    { widthMillimetres: 8.2, heightMillimetres: 6.2, source: 'from-memory', status: 'memory' },
  ],
  nativeRates: [
    {
      filmFps: 14,
      use: 'silent, the very first years',
      sounds: ['none'],
      source: 'encyclopaedia-9-5mm',
      status: 'secondary',
    },
    {
      filmFps: 16,
      use: 'silent; with a stripe 16 to 18',
      sounds: ['none', 'magnetic'],
      source: 'encyclopaedia-9-5mm',
      status: 'secondary',
      note: 'Rate of striped film: practice, no source',
    },
    {
      filmFps: 24,
      use: 'printed sound films',
      sounds: ['optical'],
      source: 'common-practice',
      status: 'practice',
    },
  ],
  // A separation of about 26 to 28 frames is remembered, too doubtful to compute with.
  soundTracks: [],
};
