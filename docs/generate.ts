/** Writes what is made from code: docs/errors.md, docs/care-cases.md, docs/api.md, the examples in docs/minerals.md, the nutrients and the tables of a workspace file in docs/formats.md. With `--check` it only compares, and fails when a page is stale. */
import { readFileSync, writeFileSync } from 'node:fs';
import { archivedTables } from '#adapters/storage/archivedTables.ts';
import { type FaultFacts, faultCatalogue } from '#core/faultCatalogue.ts';
import { nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { apiPage } from './apiPage.ts';
import { careCasesPage } from './careCases.ts';
import { mineralExamples } from './mineralExamples.ts';
import { table } from './table.ts';

const head = `# Faults

Made from \`src/core/faultCatalogue.ts\` by \`node docs/generate.ts\`; do not edit. A fault prints its title, a message with the
particulars and the next step. A person's fault ends the command with exit code 1, the program's own with 2. A code keeps its
meaning for good.

`;

const rows = [
  ['code', 'title', 'whose', 'next step'],
  ...Object.entries<FaultFacts>(faultCatalogue).map(([code, { title, blame, nextStep }]) => [`\`${code}\``, title, blame, nextStep]),
];

/** The page with the text between the two marks of a part made anew. */
function withPart(page: string, part: string, text: string): string {
  const [begin, end] = [`<!-- ${part}: made by docs/generate.ts -->\n`, `<!-- end of the ${part} -->\n`];
  const [before = '', rest = ''] = page.split(begin);
  const [, after = ''] = rest.split(end);
  return `${before}${begin}\n${text}\n${end}${after}`;
}

const nutrientRows = [
  ['key', 'printed name', 'unit'],
  ...nutrientKeys.map(key => [`\`${key}\``, nutrients[key].printedName, nutrients[key].unit]),
];

const workspaceRows = [
  ['table', 'columns'],
  ...archivedTables.map(({ name, columns }) => [`\`${name}\``, columns.map(column => `\`${column}\``).join(', ')]),
];

const pages: readonly (readonly [name: string, make: (now: string) => string])[] = [
  ['errors.md', () => head + table(rows)],
  ['care-cases.md', careCasesPage],
  ['api.md', await apiPage().then(page => () => page)],
  ['minerals.md', await mineralExamples().then(examples => (now: string) => withPart(now, 'examples', examples))],
  ['formats.md', now => withPart(withPart(now, 'nutrients', table(nutrientRows)), 'tables', table(workspaceRows))],
];

for (const [name, make] of pages) {
  const file = new URL(name, import.meta.url);
  const now = readText(file);
  const fresh = make(now);
  if (!process.argv.includes('--check')) {
    writeFileSync(file, fresh);
  } else if (now !== fresh) {
    process.stderr.write(`docs/${name} is stale\nNext: run \`node docs/generate.ts\` and commit the page.\n`);
    process.exitCode = 1;
  }
}

function readText(file: URL): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
