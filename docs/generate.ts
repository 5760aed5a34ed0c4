/** Writes the pages that are made from code: docs/errors.md. With `--check` it only compares, and fails when a page is stale. */
import { readFileSync, writeFileSync } from 'node:fs';
import { type FaultFacts, faultCatalogue } from '#core/errors.ts';

const page = new URL('errors.md', import.meta.url);

const head = `# Faults

Made from \`src/core/errors.ts\` by \`node docs/generate.ts\`; do not edit. A fault prints its title, a message with the
particulars and the next step. A person's fault ends the command with exit code 1, the program's own with 2. A code keeps its
meaning for good.

`;

const rows = [
  ['code', 'title', 'whose', 'next step'],
  ...Object.entries<FaultFacts>(faultCatalogue).map(([code, { title, blame, nextStep }]) => [`\`${code}\``, title, blame, nextStep]),
];

/** A Markdown table with its columns aligned, as the formatter would have it. */
function table(rows: readonly string[][]): string {
  const [headings = [], ...body] = rows;
  const widths = headings.map((_, column) => Math.max(...rows.map(row => row[column]!.length)));
  const line = (cells: string[]) => `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |\n`;
  return [line(headings), line(widths.map(width => '-'.repeat(width))), ...body.map(line)].join('');
}

const fresh = head + table(rows);

if (!process.argv.includes('--check')) {
  writeFileSync(page, fresh);
} else if (readText(page) !== fresh) {
  process.stderr.write('docs/errors.md is stale\nNext: run `node docs/generate.ts` and commit the page.\n');
  process.exitCode = 1;
}

function readText(file: URL): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
