import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { openDataFolder } from '../../test/openData.ts';
import type { PantryAdditive, PantryFood, PantryItem } from './pantry.ts';
import { partsOf, type Recipe } from './recipe.ts';

/** Columns of the abbreviated file of USDA SR28, per 100 g. A food without one of these is no truth: reading it throws. */
const neededColumns = {
  waterG: 'Water_(g)',
  proteinG: 'Protein_(g)',
  fatG: 'Lipid_Tot_(g)',
  carbohydrateG: 'Carbohydrt_(g)',
  phosphorusMg: 'Phosphorus_(mg)',
  potassiumMg: 'Potassium_(mg)',
  sodiumMg: 'Sodium_(mg)',
} as const;

/** These may be empty: then the panel leaves the line off, unless the food cannot hold it or weighs next to nothing. */
const otherColumns = {
  saturatedFatG: 'FA_Sat_(g)',
  fiberG: 'Fiber_TD_(g)',
  totalSugarsG: 'Sugar_Tot_(g)',
  cholesterolMg: 'Cholestrl_(mg)',
  calciumMg: 'Calcium_(mg)',
  ironMg: 'Iron_(mg)',
} as const;

const columns = { ...neededColumns, ...otherColumns };
type Needed = keyof typeof neededColumns;
type Other = keyof typeof otherColumns;
type Traced = Needed | Other;
const traced = Object.keys(columns) as readonly Traced[];

/** Amounts in 100 g of one thing; an absent one is unknown. */
export type Amounts = Readonly<Record<Needed, number> & Partial<Record<Other, number>>>;

/** What 100 g of the finished food truly holds. The added milligrams are a part of the phosphorus and of the potassium. */
export type Composition = Amounts & { readonly energyKcal: number; readonly addedPhosphorusMg: number; readonly addedPotassiumMg: number };

/**
 * Adds up the ingredients and takes what the cooking drives off as water, so that all else is left in fewer grams.
 * 2 g of salt in 100 g that roast down to 80 g: 983 mg of sodium per 100 g, from 787. Energy is 4, 4 and 9 kcal a gram of
 * protein, carbohydrate and fat (21 CFR 101.9(c)(1)(i)(B)); no mineral leaves with the water.
 *
 * @throws RangeError when more water leaves than the recipe holds.
 */
export function compositionPer100G(recipe: Recipe): Composition {
  const lines = recipe.items.flatMap(partsOf);
  const sumOf = (nutrient: Traced): number | undefined =>
    lines.reduce<number | undefined>((sum, { item, grams }) => {
      const amount = amountsPer100G(item)[nutrient] ?? (grams <= nextToNothingG ? 0 : undefined);
      return sum === undefined || amount === undefined ? undefined : sum + (grams * amount) / recipe.yieldG;
    }, 0);
  const amounts = Object.fromEntries(
    traced.map(nutrient => [nutrient, sumOf(nutrient)]).filter(([, amount]) => amount !== undefined),
  ) as Amounts;
  const waterG = amounts.waterG - ((100 - recipe.yieldG) * 100) / recipe.yieldG;
  if (waterG < 0) throw new RangeError(`${recipe.id}: more water leaves than goes in`);
  const added = (element: 'phosphorus' | 'potassium') =>
    lines.reduce((sum, { item, grams }) => sum + (grams * addedMgPer100G(item, element)) / recipe.yieldG, 0);
  return {
    ...amounts,
    waterG,
    energyKcal: 4 * amounts.proteinG + 4 * amounts.carbohydrateG + 9 * amounts.fatG,
    addedPhosphorusMg: added('phosphorus'),
    addedPotassiumMg: added('potassium'),
  };
}

/** An empty cell of so few grams in 100 g (spices, yeast) is read as nothing. */
const nextToNothingG = 1;

const nothing: Amounts = {
  waterG: 0,
  proteinG: 0,
  fatG: 0,
  carbohydrateG: 0,
  phosphorusMg: 0,
  potassiumMg: 0,
  sodiumMg: 0,
  saturatedFatG: 0,
  fiberG: 0,
  totalSugarsG: 0,
  cholesterolMg: 0,
  calciumMg: 0,
  ironMg: 0,
};

/** @throws RangeError when the item's row does not exist or has no figure for one of `neededColumns`. */
export function amountsPer100G(item: PantryItem): Amounts {
  if ('ndb' in item) return foodAmounts(item);
  if (!('additive' in item)) return { ...nothing, waterG: 100 * item.waterG };
  const { massFraction } = additiveRow(item);
  const mg = (element: keyof typeof massFraction) => 100_000 * (massFraction[element] ?? 0);
  return {
    ...nothing,
    phosphorusMg: mg('phosphorus'),
    potassiumMg: mg('potassium'),
    sodiumMg: mg('sodium'),
    calciumMg: mg('calcium'),
  };
}

/** Phosphorus counts as added when the additive is an inorganic phosphate (not lecithin, not flavor nucleotides), potassium always. */
function addedMgPer100G(item: PantryItem, element: 'phosphorus' | 'potassium'): number {
  if (!('additive' in item)) return 0;
  const row = additiveRow(item);
  if (element === 'phosphorus' && row.phosphate !== 'inorganic') return 0;
  return 100_000 * (row.massFraction[element] ?? 0);
}

function additiveRow({ additive }: PantryAdditive) {
  const row = additiveTable.find(({ id }) => id === additive);
  if (row === undefined) throw new RangeError(`no additive "${additive}"`);
  return row;
}

const read = new Map<PantryFood, Amounts>();

function foodAmounts(food: PantryFood): Amounts {
  const known = read.get(food);
  if (known !== undefined) return known;
  const cellOf = (nutrient: Traced): string => {
    const cell = rowOf(food.ndb)[columns[nutrient]] ?? '';
    if (cell !== '' || food.emptyCellsFrom === undefined || nutrient in neededColumns) return cell;
    return rowOf(food.emptyCellsFrom)[columns[nutrient]] ?? '';
  };
  const amounts: Partial<Record<Traced, number>> = {};
  for (const nutrient of traced) {
    const cell = cellOf(nutrient);
    if (cell !== '') amounts[nutrient] = Number(cell);
    else if (nutrient in neededColumns) throw new RangeError(`SR28 ${food.ndb} has no ${nutrient}`);
    else if (cannotHold(food.ndb, nutrient)) amounts[nutrient] = 0;
  }
  read.set(food, amounts as Amounts);
  return amounts as Amounts;
}

/** Plants have no cholesterol; meat and fish have neither fiber nor sugars. The first two digits are the food group. */
function cannotHold(ndb: string, nutrient: Traced): boolean {
  const group = ndb.slice(0, 2);
  if (nutrient === 'cholesterolMg') return ['02', '09', '11', '12', '16', '20'].includes(group);
  return (nutrient === 'fiberG' || nutrient === 'totalSugarsG') && ['05', '10', '13', '15', '23'].includes(group);
}

let rows: ReadonlyMap<string, Readonly<Record<string, string>>> | undefined;

function rowOf(ndb: string): Readonly<Record<string, string>> {
  rows ??= new Map(sr28Rows().map(row => [row.NDB_No ?? '', row]));
  const row = rows.get(ndb);
  if (row === undefined) throw new RangeError(`SR28 has no row ${ndb}`);
  return row;
}

/** Every row of the abbreviated file of USDA SR28 in the folder of open data, by its headings. */
export function sr28Rows(): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(join(openDataFolder, 'usda-sr28.csv'), 'utf8').replace(/^\uFEFF/, '');
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}
