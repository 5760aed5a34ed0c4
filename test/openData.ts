import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';

/** The folder of open data (USDA FoodData Central and SR28, public domain) that checks are run against; see CONTRIBUTING.md, "Test". */
export const openDataFolder = process.env.PLATEWRIGHT_OPEN_DATA ?? fileURLToPath(new URL('../../shared/data', import.meta.url));

export const statementsFile = join(openDataFolder, 'fdc', 'branded_food.csv');

export const hasOpenData = existsSync(statementsFile);

/** USDA National Nutrient Database for Standard Reference, release 28, abbreviated file; data/reference/sr28.csv keeps the rows that the project uses. */
export const sr28File = join(openDataFolder, 'usda-sr28.csv');

export const hasSr28 = existsSync(sr28File);

/** 4,500 real ingredient statements of FoodData Central branded foods. Read for checks, never copied into fixtures. */
export function realStatements(): string[] {
  const text = readFileSync(statementsFile, 'utf8');
  const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  return data.map(row => row.ingredients ?? '');
}
