import { readFileSync, writeFileSync } from 'node:fs';
import Papa from 'papaparse';
import { keptSr28, type Sr28Row } from './sr28.ts';

/** Figures of a food in data/referenceFoods.json. Alcohol has no column in SR28: see `alcoholG`. */
const keys = [
  'waterG',
  'energyKcal',
  'proteinG',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'calciumMg',
  'ironMg',
  'magnesiumMg',
  'phosphorusMg',
  'potassiumMg',
  'sodiumMg',
  'alcoholG',
] as const;

type Key = (typeof keys)[number];
type Figures = Readonly<Record<Key, number | null>>;

/**
 * data/referenceFoods.json from the selection (foods.csv) and the kept rows of SR28 (sr28.csv). The first row of `ndb` gives the figures, all of them
 * the spread. What `unknown` names is null: the row only stands in for the food there. The same on every run.
 *
 * @throws RangeError when the selection names a row that is not kept, or a figure that the table does not hold.
 */
export function referenceFoodsJson(selection: string): string {
  const { data } = Papa.parse<Readonly<Record<string, string>>>(selection, { header: true, skipEmptyLines: true });
  const foods = data.map(line => {
    const ndb = list(line.ndb);
    const figures = ndb.map(number => {
      const row = keptSr28.get(number);
      if (row === undefined) throw new RangeError(`${line.id}: no row ${number} of SR28 is kept`);
      return figuresOf(row, line.group === 'alcohol', list(line.unknown));
    });
    const { id, name, group, phosphorusKind, note } = line;
    const mayBe = list(line.mayBe);
    const household = householdMeasures(keptSr28.get(ndb[0]!)!);
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

function list(field: string | undefined): string[] {
  return field ? field.split(';') : [];
}

/** An empty field is unknown, never zero. */
function number(field: string): number | null {
  return field === '' ? null : Number(field);
}

function figuresOf(row: Sr28Row, holdsAlcohol: boolean, unknown: readonly string[]): Figures {
  for (const key of unknown) if (!(keys as readonly string[]).includes(key)) throw new RangeError(`unknown figure ${key}`);
  const entries = keys.map(key => {
    const value = key === 'alcoholG' ? (holdsAlcohol ? alcoholG(row) : 0) : number(row[key]);
    return [key, unknown.includes(key) ? null : value];
  });
  return Object.fromEntries(entries) as Figures;
}

/** The rest of 100 g: the abbreviated file leaves alcohol out. Whiskey of 86 proof: 36 g. */
function alcoholG(row: Sr28Row): number | null {
  const others = [row.waterG, row.proteinG, row.fatG, row.carbohydrateG, row.ashG].map(number);
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

function householdMeasures(row: Sr28Row): { text: string; grams: number }[] {
  const measures = [
    { text: row.measure1, grams: Number(row.measure1G) },
    { text: row.measure2, grams: Number(row.measure2G) },
  ];
  return measures.filter(({ text, grams }) => text !== '' && grams > 0);
}

if (import.meta.main) {
  const selection = readFileSync(new URL('foods.csv', import.meta.url), 'utf8');
  writeFileSync(new URL('../referenceFoods.json', import.meta.url), referenceFoodsJson(selection));
}
