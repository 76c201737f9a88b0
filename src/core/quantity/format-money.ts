/**
 * Money with its cents, no currency: `128.40`, `1,5` never. The currency is the reader's own.
 *
 * @example formatMoney(12840) // '128.40'
 */
export function formatMoney(cents: number): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError(`cannot print ${cents} cents`);
  const size = Math.abs(cents);
  const whole = String(Math.floor(size / 100));
  const grouped = whole.length > 4 ? whole.replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202f') : whole;
  return `${cents < 0 ? '−' : ''}${grouped}.${String(size % 100).padStart(2, '0')}`;
}
