import { writeFileSync } from 'node:fs';
import Papa from 'papaparse';
import { headings, labelRow } from './labels.ts';
import { demoPlates } from './plates.ts';
import { demoFoods } from './recipes.ts';

const foodsByCategory = Object.entries(demoFoods);

/** Every file of the demo that is made from the recipes, by its path in this folder. The same on every run. */
export function demoFiles(): Readonly<Record<string, string>> {
  const rows = foodsByCategory.flatMap(([category, foods]) => foods.map(food => labelRow(food, category)));
  const oddities = foodsByCategory.flatMap(([, foods]) => foods).flatMap(({ id, odd }) => (odd === undefined ? [] : [{ id, ...odd }]));
  return {
    'labels.csv': `${Papa.unparse(rows, { columns: [...headings], newline: '\n' })}\n`,
    'oddities.json': json(oddities),
    ...Object.fromEntries(demoPlates.map(plate => [`plates/${plate.id}.json`, json(plate)])),
  };
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

if (import.meta.main) {
  for (const [path, text] of Object.entries(demoFiles())) writeFileSync(new URL(path, import.meta.url), text);
}
