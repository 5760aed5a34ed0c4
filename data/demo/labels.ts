import type { PrintedLabel } from '#core/label/label.ts';
import { compositionPer100G } from './composition.ts';
import { localGtin } from './gtin.ts';
import { makers, type PrintStyle } from './makers.ts';
import { type PanelLine, panelLines, printedPanel } from './panel.ts';
import type { DemoFood } from './recipe.ts';
import type { Category } from './recipes.ts';
import { statementText } from './statementText.ts';

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

export type Heading = (typeof headings)[number];

export type LabelRow = Readonly<Record<Heading, string>>;

/** One row of the table: what the recipe and the law print, with the oddities of this label over it. */
export function labelRow(food: DemoFood, category: Category): LabelRow {
  const label = printedLabel(food);
  const { serving, panel } = label;
  const cells = {
    ...label,
    category,
    servingHousehold: serving.household,
    servingGrams: serving.grams,
    servingMilliliters: serving.milliliters,
    servingsPerContainer: serving.perContainer,
    front: label.front.join(' | '),
    ...panel,
    ...food.odd?.printed,
  } as Partial<Record<Heading, string | number>>;
  return Object.fromEntries(headings.map(heading => [heading, String(cells[heading] ?? '')])) as LabelRow;
}

/** The label before any oddity, as label JSON. */
export function printedLabel(food: DemoFood): PrintedLabel {
  const maker = makers[food.maker];
  const style: PrintStyle = maker.style;
  const { figures, notSignificantSourceOf } = printedPanel(compositionPer100G(food), food.serving.grams, style, food.leavesOutZeros);
  return {
    id: food.id,
    name: food.name,
    maker: maker.name,
    gtin: localGtin(maker.number, food.itemNumber),
    market: 'us',
    readOn: food.readOn,
    readAt: food.readAt,
    serving: food.serving,
    basis: 'per-serving',
    state: food.state ?? 'as-packaged',
    front: food.front ?? [],
    panel: figures as Readonly<Record<PanelLine, string | number>>,
    ...(notSignificantSourceOf === undefined ? {} : { notSignificantSourceOf }),
    otherColumns: [],
    statement: misprinted(statementText(food, style), food),
    referenceAmount: food.referenceAmount,
    ...(food.unsaltedVersionOf === undefined ? {} : { unsaltedVersionOf: food.unsaltedVersionOf }),
  };
}

function misprinted(statement: string, { odd }: DemoFood): string {
  return odd?.misprint === undefined ? statement : statement.replace(odd.misprint.right, odd.misprint.wrong);
}
