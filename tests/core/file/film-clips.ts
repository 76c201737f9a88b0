/**
 * Clips by which the reading of a recording is accepted. These seeds were set down before anything was
 * tuned; tuning looks at seeds from 1000 on only.
 */
export const ACCEPTANCE_SEEDS: readonly number[] = Array.from({ length: 40 }, (_, at) => 1 + at);
