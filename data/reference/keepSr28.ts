import { readFileSync, writeFileSync } from 'node:fs';
import Papa from 'papaparse';
import { ingredientsIn } from '#data/packages/dataFiles.ts';
import { hasSr28, sr28File } from '../../test/openData.ts';
import { sr28Columns, sr28Rows } from './sr28.ts';

/** Numbers of the rows that the composition table, the demo and the foods of known recipe rest on, in their order. */
export function usedNumbers(): readonly string[] {
  const selection = readFileSync(new URL('foods.csv', import.meta.url), 'utf8');
  const foods = Papa.parse<{ readonly ndb: string }>(selection, { header: true, skipEmptyLines: true }).data;
  const ingredients = ['../demo/ingredients.json', '../../bench/knownRecipes/pantry.json'].flatMap(file =>
    Object.values(ingredientsIn(new URL(file, import.meta.url))),
  );
  const numbers = [
    ...foods.flatMap(({ ndb }) => ndb.split(';')),
    ...ingredients.flatMap(({ source }) =>
      source.kind === 'sr28' ? [source.ndb, ...(source.emptyCellsFrom === undefined ? [] : [source.emptyCellsFrom])] : [],
    ),
  ];
  return [...new Set(numbers)].sort();
}

/** sr28.csv: of the published file the rows that are used and the columns that are read, without the names. */
export function keptFromPublished(published: string): string {
  const used = new Set(usedNumbers());
  const rows = sr28Rows(published).filter(({ ndb }) => used.has(ndb));
  return `${Papa.unparse(rows, { columns: [...sr28Columns], newline: '\n' })}\n`;
}

if (import.meta.main) {
  if (hasSr28) writeFileSync(new URL('sr28.csv', import.meta.url), keptFromPublished(readFileSync(sr28File, 'utf8')));
  else process.stderr.write(`There is no ${sr28File}: sr28.csv stays as it is.\n`);
}
