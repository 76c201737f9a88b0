import type { Look } from './look.ts';

/** Faults of shutter, rates and exposure. */
export const SHUTTER_LOOKS = {
  pulsing: {
    name: 'Pulsing',
    bench: { cameraFps: 25, exposureSeconds: 1 / 100, readoutSeconds: 0 },
    wants: 'strips',
  },
  'bands-up': {
    name: 'Bands roll up',
    bench: { cameraFps: 25, exposureSeconds: 1 / 100 },
    wants: 'strips',
  },
  'bands-down': {
    name: 'Bands roll down',
    bench: { filmFps: 16.4, cameraFps: 25, exposureSeconds: 1 / 100 },
    wants: 'strips',
  },
  'bands-standing': {
    name: 'Bands stand',
    bench: { filmFps: 50 / 3, cameraFps: 25, exposureSeconds: 1 / 100 },
  },
  'black-bands': { name: 'Black bands', bench: { exposureSeconds: 1 / 500 } },
  breathing: {
    name: 'Breathes slowly though matched',
    bench: {
      bladeDegrees: [
        [60, 75],
        [60, 52.5],
        [60, 52.5],
      ],
      cameraFps: 25,
      exposureSeconds: 1 / 54,
      readoutSeconds: 0,
    },
    wants: 'strips',
  },
  'lamp-flicker': {
    name: 'Lamp flickers, shutter open',
    bench: {
      lampFlicker: { lampHz: 100, depth: 0.5 },
      cameraFps: 24,
      exposureSeconds: 1 / 250,
      readoutSeconds: 0.016,
    },
    wants: 'strips',
  },
  ghost: {
    name: 'Two pictures in one',
    bench: { cameraFps: 25, exposureSeconds: 1 / 27, readoutSeconds: 0 },
    filmFrame: 80,
    isMostBlended: true,
    wants: 'loupe',
    loupeAt: { x: 0.46, y: 0.24 },
  },
  'part-ghost': {
    name: 'Two pictures in some rows',
    bench: { cameraFps: 25, exposureSeconds: 1 / 54, readoutSeconds: 0.03 },
    // The splice: the rows read last already hold the next shot.
    filmFrame: 70.6,
  },
  'three-in-one': {
    name: 'Three pictures in one',
    bench: { cameraFps: 8, exposureSeconds: 1 / 8, readoutSeconds: 0 },
    filmFrame: 77,
    isMostBlended: true,
    wants: 'loupe',
    loupeAt: { x: 0.46, y: 0.24 },
  },
  interlaced: {
    name: 'Combs at moving edges',
    bench: { cameraFps: 25, exposureSeconds: 1 / 54, readoutSeconds: 0, isInterlaced: true },
    filmFrame: 80,
    isMostBlended: true,
    wants: 'loupe',
    loupeAt: { x: 0.6, y: 0.4 },
  },
} as const satisfies Record<string, Look>;

/** Faults of light and colour. */
export const TONE_LOOKS = {
  tungsten: { name: 'Too yellow', tone: { balance: [1.32, 0.96, 0.52] } },
  daylight: { name: 'Too blue', tone: { balance: [0.66, 0.96, 1.5] } },
  over: { name: 'Too bright', tone: { exposure: 2.83 } },
  under: { name: 'Too dark', tone: { exposure: 0.25 } },
  clipped: { name: 'Whites clipped, pulled back later', tone: { exposure: 2.2, pulledBack: 0.45 } },
} as const satisfies Record<string, Look>;

/** Faults of files. */
export const FILE_LOOKS = {
  blended: {
    name: 'Neighbours blended',
    file: { copy: 'blend' },
    view: 'television',
    filmFrame: 80,
    isMostBlended: true,
    wants: 'loupe',
    loupeAt: { x: 0.46, y: 0.24 },
  },
  'too-fast': {
    name: 'Too fast',
    file: { playedFps: 25 },
    view: 'kept',
    filmFrame: 20,
    afterSeconds: 1,
  },
  // Later than too-fast: it has run on into the next shot, which the film at its own speed has yet to reach.
  'straight-on': {
    name: 'Played straight on',
    file: { playedFps: 25 },
    view: 'kept',
    filmFrame: 20,
    afterSeconds: 2.5,
    // Clear of the child's face.
    split: 0.6,
  },
  'too-slow': {
    name: 'Too slow',
    file: { playedFps: 12 },
    view: 'kept',
    filmFrame: 20,
    afterSeconds: 1,
  },
  doubled: {
    name: 'One lost, one twice',
    // In step with the film, so that every picture is a film frame of its own.
    bench: { cameraFps: 18, exposureSeconds: 1 / 54, readoutSeconds: 0 },
    file: { lostEvery: 9 },
    filmFrame: 76,
    wants: 'strips',
  },
} as const satisfies Record<string, Look>;
