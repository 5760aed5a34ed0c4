import type { PrintedLabel } from '#core/label/label.ts';
import { panelLines } from '#data/packages/panelLines.ts';
import { printedPackage } from '#data/packages/printedPackage.ts';
import { localGtin } from './gtin.ts';
import type { DemoFood } from './recipes.ts';

/** The headings of labels.csv, as docs/formats.md names them. */
export const headings = [
  'id',
  'name',
  'maker',
  'category',
  'gtin',
  'market',
  'readOn',
  'readAt',
  'servingHousehold',
  'servingGrams',
  'servingMilliliters',
  'servingsPerContainer',
  'basis',
  'state',
  'front',
  ...panelLines,
  'notSignificantSourceOf',
  'referenceAmount',
  'unsaltedVersionOf',
  'statement',
] as const;

/** One row of the table, its cells by their headings: what the recipe and the law print, with the oddities of this label over it. */
export function labelRow(food: DemoFood, category: string): Readonly<Record<string, string>> {
  const { serving, panel, front, referenceAmount: _, otherColumns: __, ...label } = printedLabel(food);
  const cells: Readonly<Record<string, string | number | undefined>> = {
    ...label,
    category,
    servingHousehold: serving.household,
    servingGrams: serving.grams,
    servingMilliliters: serving.milliliters,
    servingsPerContainer: serving.perContainer,
    front: front.join(' | '),
    referenceAmount: food.sold.referenceAmount,
    ...panel,
    ...food.odd?.printed,
  };
  return Object.fromEntries(headings.map(heading => [heading, String(cells[heading] ?? '')]));
}

/** The label before any oddity of its figures, as label JSON. */
export function printedLabel(food: DemoFood): PrintedLabel {
  const { maker, itemNumber, readOn, readAt, state, front, referenceAmount, unsaltedVersionOf } = food.sold;
  const { figures, notSignificantSourceOf, statement } = printedPackage(food, maker.style);
  return {
    id: food.id,
    name: food.name,
    maker: maker.name,
    gtin: localGtin(maker.number, itemNumber),
    market: 'us',
    readOn,
    readAt,
    serving: food.serving,
    basis: 'per-serving',
    state: state ?? 'as-packaged',
    front: front ?? [],
    panel: figures,
    ...(notSignificantSourceOf === undefined ? {} : { notSignificantSourceOf }),
    otherColumns: [],
    statement,
    referenceAmount,
    ...(unsaltedVersionOf === undefined ? {} : { unsaltedVersionOf }),
  };
}
