// The ranges of rates, once: a field of the bench and the fields of the sheets take the same entries.

/** A rate of the film: as it runs, or as it was shot. */
export const FILM_RATE = { kind: 'quantity', unit: 'fps', minimum: 1, maximum: 60 } as const;

/** A rate that a camera records at, or that finished video is shown at. */
export const VIDEO_RATE = { kind: 'quantity', unit: 'fps', minimum: 1, maximum: 240 } as const;
