/**
 * One row of CSV (RFC 4180, lines ended by LF). A cell that a spreadsheet would run as a formula gets a leading
 * apostrophe: `=1+1` becomes `'=1+1`. Tabs and line ends at the start count too, since they are skipped there.
 */
export function csvRow(cells: readonly string[]): string {
  return `${cells.map(csvCell).join(',')}\n`;
}

function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",;\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
