/** What every sheet says, in the same words, when an exposure fits into a dark gap of the shutter. */
export const DARK_ROWS = 'some rows can stay dark: no promise';

/** The same as a sentence of its own. */
export const DARK_ROWS_SENTENCE = `${DARK_ROWS.charAt(0).toUpperCase()}${DARK_ROWS.slice(1)}.`;
