import { readFileSync } from 'node:fs';
import Papa from 'papaparse';

/** Columns of sr28.csv, and the headings of the published file that they come from. Figures are those of 100 g. */
const headings = {
  ndb: 'NDB_No',
  waterG: 'Water_(g)',
  energyKcal: 'Energ_Kcal',
  proteinG: 'Protein_(g)',
  fatG: 'Lipid_Tot_(g)',
  ashG: 'Ash_(g)',
  saturatedFatG: 'FA_Sat_(g)',
  cholesterolMg: 'Cholestrl_(mg)',
  carbohydrateG: 'Carbohydrt_(g)',
  fiberG: 'Fiber_TD_(g)',
  totalSugarsG: 'Sugar_Tot_(g)',
  vitaminDMcg: 'Vit_D_µg',
  calciumMg: 'Calcium_(mg)',
  ironMg: 'Iron_(mg)',
  magnesiumMg: 'Magnesium_(mg)',
  phosphorusMg: 'Phosphorus_(mg)',
  potassiumMg: 'Potassium_(mg)',
  sodiumMg: 'Sodium_(mg)',
  measure1: 'GmWt_Desc1',
  measure1G: 'GmWt_1',
  measure2: 'GmWt_Desc2',
  measure2G: 'GmWt_2',
} as const;

type Column = keyof typeof headings;
export const sr28Columns = Object.keys(headings) as readonly Column[];

/** A food of USDA SR28, its cells as they are published. An empty one is unknown, never zero. */
export interface Sr28Row extends Readonly<Record<Column, string>> {
  /** Its name, in the published file alone: some names hold those of makers, so none is kept. */
  readonly Shrt_Desc?: string;
}

const columnOf = new Map<string, string>(sr28Columns.map(column => [headings[column], column]));

/** Reads the published file (abbreviated, with a line of headings) or our own. */
export function sr28Rows(text: string): readonly Sr28Row[] {
  const { data } = Papa.parse<Sr28Row>(text.replace(/^\ufeff/u, ''), {
    header: true,
    skipEmptyLines: true,
    transformHeader: heading => columnOf.get(heading) ?? heading,
  });
  return data;
}

/** The rows that the project uses, by NDB number. */
export const keptSr28: ReadonlyMap<string, Sr28Row> = new Map(
  sr28Rows(readFileSync(new URL('sr28.csv', import.meta.url), 'utf8')).map(row => [row.ndb, row]),
);
