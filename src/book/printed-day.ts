/**
 * A day as the book prints it.
 *
 * @param day `YYYY-MM-DD`
 * @returns for instance `27 November 2026`
 */
export function printedDay(day: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
}
