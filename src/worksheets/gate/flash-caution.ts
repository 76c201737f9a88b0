/** A pair of opposite changes of at least this, % of the brightest, counts as a flash (WCAG 2.3.1). */
const FLASH_PERCENT = 10;
/** More flashes in a second than this are too many (WCAG 2.3.1). */
const MOST_FLASHES_PER_SECOND = 3;

/**
 * Caution for a picture that flashes strongly and fast enough to bring on a seizure; none for a weak
 * or slow pulse. The ripple is counted against the mean, which is never above the brightest, so no
 * flash is missed.
 */
export function flashCaution(ripplePercent: number, pulseHz: number): readonly string[] {
  return ripplePercent >= FLASH_PERCENT && Math.abs(pulseHz) > MOST_FLASHES_PER_SECOND
    ? [
        'A picture that flashes by 10 % or more, more than three times a second, can bring on a seizure in some people. Say so before you show it, and never hand such a file to a customer.',
      ]
    : [];
}
