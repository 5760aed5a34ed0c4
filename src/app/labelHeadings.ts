/** Which column of a table is which field of a label: the headings of docs/formats.md, and the names that packages and sheets use. */
import { nutrients } from '#core/quantity/nutrients.ts';

const fields = {
  id: ['id'],
  name: ['name', 'product', 'product name', 'food', 'food name', 'item'],
  maker: ['maker', 'brand', 'manufacturer', 'company'],
  category: ['category'],
  gtin: ['gtin', 'UPC', 'UPC code', 'EAN', 'barcode'],
  market: ['market'],
  readOn: ['read on', 'date', 'date read'],
  readAt: ['read at', 'shop', 'store'],
  servingHousehold: ['serving household', 'serving', 'serving size', 'household measure'],
  servingGrams: ['serving grams', 'serving (g)', 'serving size (g)', 'serving size (grams)', 'serving weight (g)'],
  servingMilliliters: ['serving milliliters', 'serving (mL)', 'serving size (mL)', 'serving size (milliliters)'],
  servingsPerContainer: ['servings per container', 'servings per package'],
  basis: ['basis'],
  state: ['state'],
  front: ['front', 'claims'],
  statement: ['statement', 'ingredients', 'ingredient statement', 'ingredient list', 'ingredients list'],
  notSignificantSourceOf: ['not significant source of', 'not a significant source of'],
  referenceAmount: ['reference amount'],
  unsaltedVersionOf: ['unsalted version of'],
} as const;

/** Names beyond the printed one, which is matched with and without its unit. */
const otherPanelNames = {
  energyKcal: ['energy', 'energy (kcal)', 'kcal'],
  energyKj: ['energy (kJ)', 'kJ'],
  fatG: ['fat', 'fat (g)'],
  saturatedFatG: ['sat fat', 'sat fat (g)', 'saturates', 'saturates (g)'],
  carbohydrateG: [
    'carbohydrate',
    'carbohydrates',
    'total carbohydrates',
    'total carb',
    'total carb.',
    'total carbs',
    'carbs',
    'carbohydrate (g)',
    'carbs (g)',
  ],
  fiberG: ['fiber', 'fibre', 'dietary fibre', 'fiber (g)', 'fibre (g)'],
  totalSugarsG: ['sugars', 'sugars (g)'],
  sugarAlcoholG: ['sugar alcohols'],
  saltG: ['salt', 'salt (g)'],
} as const;

export type LabelField = keyof typeof fields;
export type PanelHeading = keyof typeof nutrients | 'saltG' | 'energyKj';

/** A column that a label has a place for. */
export type LabelHeading = { readonly kind: 'field'; readonly key: LabelField } | { readonly kind: 'panel'; readonly key: PanelHeading };

/** Case, blanks, underscores, hyphens and brackets do not count. µg is mcg. "Sodium (mg)" is "sodiummg". */
function bare(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[µμ]g/g, 'mcg')
    .replace(/[\s_\-‐‑–—()[\]{}]/g, '');
}

function panelNames(): [string, LabelHeading][] {
  const names: [string, LabelHeading][] = [];
  const add = (name: string, key: PanelHeading) => names.push([bare(name), { kind: 'panel', key }]);
  for (const [key, { printedName, unit }] of Object.entries(nutrients) as [
    keyof typeof nutrients,
    (typeof nutrients)[keyof typeof nutrients],
  ][]) {
    add(key, key);
    add(printedName, key);
    add(`${printedName} (${unit})`, key);
  }
  for (const [key, others] of Object.entries(otherPanelNames) as [PanelHeading, readonly string[]][]) {
    add(key, key);
    for (const other of others) add(other, key);
  }
  return names;
}

function fieldNames(): [string, LabelHeading][] {
  return (Object.entries(fields) as [LabelField, readonly string[]][]).flatMap(([key, names]) =>
    [key, ...names].map((name): [string, LabelHeading] => [bare(name), { kind: 'field', key }]),
  );
}

const byBareName: ReadonlyMap<string, LabelHeading> = new Map([...panelNames(), ...fieldNames()]);

/** The field that a heading stands for; undefined for one that a label has no place for. `Sodium (mg)` is `sodiumMg`, `Sodium (g)` is nothing. */
export function labelHeading(heading: string): LabelHeading | undefined {
  return byBareName.get(bare(heading));
}
