/** How finely the opening of a lens can be set, in the words of a form. */
export const LENS_STEP_NAMES = {
  third: 'in third stops',
  half: 'in half stops',
  whole: 'in whole stops',
  free: 'to any opening, without clicks',
} as const;
