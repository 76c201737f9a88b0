import { sixteen } from './sixteen.ts';
import type { Gauge } from './gauge.ts';

/**
 * Super 16, in the standards 16 mm type W: 16 mm film with one row of holes and a wider picture in
 * the place of the sound track. Only ever camera film, not a projection format.
 *
 * @source movies-tech-faq (picture); smpte-201-1996 (purpose)
 */
export const super16: Gauge = {
  ...sixteen,
  id: 'super-16',
  name: 'Super 16',
  perforation: { ...sixteen.perforation, positions: ['one-edge-at-frame-line'] },
  cameraPicture: [
    {
      widthMillimetres: 12.4,
      heightMillimetres: 7.49,
      source: 'movies-tech-faq',
      status: 'secondary',
      note: '0.488 × 0.295 in; sources range over 12.35–12.52 × 7.41–7.49 mm',
    },
    {
      widthMillimetres: 12.35,
      heightMillimetres: 7.42,
      source: 'de-encyclopaedia-16mm',
      status: 'secondary',
    },
  ],
  projectedPicture: [],
  nativeRates: [
    {
      filmFps: 24,
      use: 'sound, kept apart',
      sounds: ['none'],
      source: 'common-practice',
      status: 'practice',
    },
    {
      filmFps: 25,
      use: 'television in 50 Hz countries',
      sounds: ['none'],
      source: 'common-practice',
      status: 'practice',
    },
  ],
  soundTracks: [],
};
