import { remembered, seen, type Gauge } from './gauge.ts';

const STANDARD = 'smpte-149-2004';

/**
 * Super 8, in the standards 8 mm type S: smaller holes beside the middle of the picture.
 *
 * @source smpte-149-2004 (film and holes); smpte-154-157 (pictures); others as marked
 */
export const super8: Gauge = {
  id: 'super-8',
  name: 'Super 8',
  filmWidth: seen(7.976, STANDARD, { toleranceMillimetres: 0.038 }),
  perforationsPerFrame: 1,
  pitch: {
    long: {
      millimetres: 4.234,
      inches: 0.1667,
      toleranceMillimetres: 0.01,
      source: STANDARD,
      status: 'seen',
      hundredPitches: seen(423.42, STANDARD, { toleranceMillimetres: 0.43 }),
    },
    short: {
      millimetres: 4.227,
      inches: 0.1664,
      toleranceMillimetres: 0.01,
      source: STANDARD,
      status: 'seen',
      hundredPitches: seen(422.66, STANDARD, { toleranceMillimetres: 0.43 }),
    },
  },
  framesPerFoot: { frames: 72, source: 'de-encyclopaedia-filmschritt', status: 'secondary' },
  perforation: {
    width: seen(0.914, STANDARD, { toleranceMillimetres: 0.01 }),
    height: seen(1.143, STANDARD, { toleranceMillimetres: 0.01 }),
    edgeDistance: seen(0.51, STANDARD, { toleranceMillimetres: 0.05 }),
    positions: ['one-edge-beside-picture'],
    positionOrigin: {
      source: 'smpte-153-2001',
      status: 'seen',
      note: 'Picture centred on the perforation',
    },
  },
  cameraPicture: [
    {
      widthMillimetres: 5.69,
      heightMillimetres: 4.22,
      source: 'from-memory',
      status: 'memory',
      note: 'At least this much (ISO 3645, not read); real cameras differ',
    },
    {
      widthMillimetres: 6.22,
      heightMillimetres: 4.22,
      source: 'smpte-154-157',
      status: 'secondary',
      note: 'As a hobby wiki quotes SMPTE 157; the height agrees, the width does not',
    },
  ],
  projectedPicture: [
    {
      widthMillimetres: 5.31,
      heightMillimetres: 4.01,
      source: 'smpte-154-157',
      status: 'secondary',
    },
    {
      widthMillimetres: 5.36,
      heightMillimetres: 4.01,
      source: 'from-memory',
      status: 'memory',
      note: 'ISO 3645, not read',
    },
  ],
  nativeRates: [
    {
      filmFps: 18,
      use: 'silent, and most striped amateur film',
      sounds: ['none', 'magnetic'],
      source: 'australian-movie-makers-55',
      status: 'seen',
      note: 'Silent film; SMPTE 154 and 157 were not read. Rate of striped film: practice, no source',
    },
    {
      filmFps: 24,
      use: 'some striped film, printed sound films, professional use',
      sounds: ['magnetic', 'optical'],
      source: 'lerman-1974',
      status: 'seen',
      note: 'As the professional rate; SMPTE 154 and 157 were not read',
    },
  ],
  soundTracks: [
    {
      system: 'magnetic',
      framesAhead: 18,
      source: 'hobby-sound-article',
      status: 'secondary',
      note: 'The article gives the distance too: 3 in',
      width: seen(0.69, 'smpte-164-2002'),
      place: { edge: 'far', edgeDistanceMillimetres: 0 },
    },
    {
      system: 'optical',
      framesAhead: 22,
      source: 'from-memory',
      status: 'memory',
      note: 'One hobby article prints 16; taken as an error',
      width: remembered(0.69, 'Drawn as wide as the stripe, whose place it takes'),
      place: { edge: 'far', edgeDistanceMillimetres: 0 },
    },
  ],
};
