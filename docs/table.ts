/** A Markdown table with its columns aligned, as the formatter would have it. */
export function table(rows: readonly (readonly string[])[]): string {
  const [headings = [], ...body] = rows;
  const widths = headings.map((_, column) => Math.max(...rows.map(row => row[column]!.length)));
  const line = (cells: readonly string[]) => `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |\n`;
  return [line(headings), line(widths.map(width => '-'.repeat(width))), ...body.map(line)].join('');
}
