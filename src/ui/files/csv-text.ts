/** Rows as comma-separated values (RFC 4180): quoted where needed, lines ended by CR LF. */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(text: string): string {
  // A leading = + - @ would be run as a formula by a spreadsheet.
  const safe = /^[=+\-@]/u.test(text) && !/^-?\d/u.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
