/** A figure or a name as a sentence of its own. */
export const withFullStop = (text: string): string => (/[.!?]$/u.test(text) ? text : `${text}.`);
