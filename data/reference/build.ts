import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { openDataFolder } from '../../test/openData.ts';

/** Keys of data/referenceFoods.json and the SR28 columns that they are read from. Alcohol has no column: see `alcoholG`. */
const columns = {
  waterG: 'Water_(g)',
  energyKcal: 'Energ_Kcal',
  proteinG: 'Protein_(g)',
  fatG: 'Lipid_Tot_(g)',
  saturatedFatG: 'FA_Sat_(g)',
  cholesterolMg: 'Cholestrl_(mg)',
  carbohydrateG: 'Carbohydrt_(g)',
  fiberG: 'Fiber_TD_(g)',
  totalSugarsG: 'Sugar_Tot_(g)',
  calciumMg: 'Calcium_(mg)',
  ironMg: 'Iron_(mg)',
  magnesiumMg: 'Magnesium_(mg)',
  phosphorusMg: 'Phosphorus_(mg)',
  potassiumMg: 'Potassium_(mg)',
  sodiumMg: 'Sodium_(mg)',
} as const;

type Key = keyof typeof columns | 'alcoholG';
type Row = Readonly<Record<string, string>>;
type Figures = Readonly<Record<Key, number | null>>;

const keys: readonly Key[] = [...(Object.keys(columns) as (keyof typeof columns)[]), 'alcoholG'];

/**
 * data/referenceFoods.json from the selection (foods.csv) and SR28. The first row of `ndb` gives the figures, all of them
 * the spread. What `unknown` names is null: the row only stands in for the food there. The same on every run.
 *
 * @throws RangeError when the selection names a row that SR28 does not have, or a figure that the table does not hold.
 */
export function referenceFoodsJson(selection: string, sr28: string): string {
  const rows = new Map(parse(sr28).map(row => [row.NDB_No!, row]));
  const foods = parse(selection).map(line => {
    const ndb = list(line.ndb);
    const figures = ndb.map(number => {
      const row = rows.get(number);
      if (row === undefined) throw new RangeError(`${line.id}: SR28 has no row ${number}`);
      return figuresOf(row, line.group === 'alcohol', list(line.unknown));
    });
    const { id, name, group, phosphorusKind, note } = line;
    const mayBe = list(line.mayBe);
    const household = householdMeasures(rows.get(ndb[0]!)!);
    const food = {
      id,
      name,
      aliases: list(line.aliases),
      ndb,
      group,
      phosphorusKind,
      per100G: figures[0]!,
      spread: spread(figures),
      household,
    };
    return JSON.stringify({ ...food, ...(mayBe.length > 0 && { mayBe }), ...(note && { note }) });
  });
  const header = {
    source:
      'USDA National Nutrient Database for Standard Reference, abbreviated file; rows by NDB number. Selection: data/reference/foods.csv',
    edition: 'release 28',
  };
  return `${JSON.stringify(header).slice(0, -1)},"foods":[\n${foods.join(',\n')}\n]}\n`;
}

function parse(text: string): Row[] {
  return Papa.parse<Row>(text.replace(/^\ufeff/u, ''), { header: true, skipEmptyLines: true }).data;
}

function list(field: string | undefined): string[] {
  return field ? field.split(';') : [];
}

/** An empty field is unknown, never zero. */
function number(field: string | undefined): number | null {
  return field === undefined || field === '' ? null : Number(field);
}

function figuresOf(row: Row, holdsAlcohol: boolean, unknown: readonly string[]): Figures {
  for (const key of unknown) if (!(keys as readonly string[]).includes(key)) throw new RangeError(`unknown figure ${key}`);
  const entries = keys.map(key => {
    const value = key === 'alcoholG' ? (holdsAlcohol ? alcoholG(row) : 0) : number(row[columns[key]]);
    return [key, unknown.includes(key) ? null : value];
  });
  return Object.fromEntries(entries) as Figures;
}

/** The rest of 100 g: the abbreviated file leaves alcohol out. Whiskey of 86 proof: 36 g. */
function alcoholG(row: Row): number | null {
  const others = ['Water_(g)', 'Protein_(g)', 'Lipid_Tot_(g)', 'Carbohydrt_(g)', 'Ash_(g)'].map(column => number(row[column]));
  if (others.includes(null)) return null;
  const rest = others.reduce<number>((left, value) => left - value!, 100);
  return Math.max(0, Number(rest.toFixed(2)));
}

function spread(figures: readonly Figures[]): Partial<Record<Key, readonly [number, number]>> {
  if (figures.length < 2) return {};
  const entries = keys.flatMap(key => {
    const values = figures.map(each => each[key]).filter(value => value !== null);
    return values.length === 0 ? [] : [[key, [Math.min(...values), Math.max(...values)]]];
  });
  return Object.fromEntries(entries);
}

function householdMeasures(row: Row): { text: string; grams: number }[] {
  return [1, 2].flatMap(which => {
    const text = row[`GmWt_Desc${which}`];
    const grams = number(row[`GmWt_${which}`]);
    return text && grams !== null && grams > 0 ? [{ text, grams }] : [];
  });
}

if (import.meta.main) {
  const selection = readFileSync(new URL('foods.csv', import.meta.url), 'utf8');
  const sr28 = readFileSync(join(openDataFolder, 'usda-sr28.csv'), 'utf8');
  writeFileSync(new URL('../referenceFoods.json', import.meta.url), referenceFoodsJson(selection, sr28));
}
