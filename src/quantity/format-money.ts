/**
 * Money with its cents and no currency, which is the reader's own: `128.40`, never `128.4`.
 *
 * @param cents  hundredths of the currency; whole
 * @returns the amount as printed everywhere
 * @throws {RangeError} when the cents are not whole
 * @source common practice, no source
 * @example formatMoney(12840) // '128.40'
 */
export function formatMoney(cents: number): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError(`cannot print ${cents} cents`);
  const size = Math.abs(cents);
  const whole = String(Math.floor(size / 100));
  const grouped = whole.length > 4 ? whole.replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202f') : whole;
  return `${cents < 0 ? '−' : ''}${grouped}.${String(size % 100).padStart(2, '0')}`;
}
