// The numbers of the home movie in one place: who moves how fast, and the colours. Lengths are page units,
// times are film frames.

/** The far waterline, and the width of the far bank. */
export const SHORE = { y: 236, width: 900 } as const;

/** The hand-held camera that follows the skiff from frame 6 on. */
export const PAN = { start: 20, travel: 128, from: 6, lasts: 64, whole: 148 } as const;

/** The skiff: where it is at frame 0, page units in a film frame, the surge of a stroke. */
export const SKIFF = { start: 130, speed: 6.1, surge: 7, y: 318 } as const;

/** One stroke of the sculls: its length, and the share of it that is the drive. 30 strokes a minute. */
export const STROKE = { filmFrames: 36, drive: 0.42, catchTurn: 0.86, sweep: 1.66 } as const;

/** The jetty and those on it. */
export const JETTY = { x: 232, parallax: 1.55, childX: 526, childY: 396, dogX: 592 } as const;

/** The second shot: how much nearer, and what it looks at. */
export const CLOSE_SHOT = { enlarged: 2.05, x: 526, y: 322 } as const;

export const SUN = { x: 132, y: 66 } as const;

export const COLOUR = {
  club: '#20566a',
  red: '#c9463a',
  flagRed: '#b23a33',
  cream: '#f4ead2',
  straw: '#efd58f',
  skin: '#e0a983',
  skinInShade: '#b97755',
  varnish: ['#e3aa5c', '#bd7a37', '#8a4f22', '#4f2c17'],
  sky: ['#5d97bd', '#8db8c9', '#c3d6d2', '#efe3c4'],
} as const;
