// One row of comma-separated values (RFC 4180), safe to open in a spreadsheet.

/**
 * The cells as a row ended by CRLF; null is an empty cell. Numbers stay numbers. A text that a spreadsheet would
 * take for a formula gets an apostrophe before it (OWASP, "CSV Injection").
 */
export const csvRow = (cells: readonly (string | number | null)[]): string =>
  `${cells.map(cellOf).join(',')}\r\n`;

function cellOf(cell: string | number | null): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const text = isFormula(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Also after spaces, or after signs that take no room (Unicode: controls, formats, what is ignorable by default),
 * and with the wide forms of the signs, which some spreadsheets take for the same.
 */
const isFormula = (text: string): boolean =>
  /^(?:[\t\r\n\0]|[\s\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}]*[=+\-@＝＋－＠])/u.test(text);
