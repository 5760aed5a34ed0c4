import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import { isNestedTooDeep } from '#core/json/nesting.ts';
import { type FormStep, presentForm } from '#core/json/presentForm.ts';
import type { PrintedColumn, PrintedFigure, PrintedLabel, PrintedPanel, PrintedServing } from './label.ts';
import { type LabelIssue, type LabelIssueCode, labelIssue } from './labelIssue.ts';
import { columnShape, figureSchema, type LabelJson, labelShape, servingShape, textSchema } from './labelJson.ts';
import { isPanelKey, type PanelKey } from './panelKeys.ts';

const object = z.record(z.string(), z.unknown(), { error: 'an object' });
const list = z.array(z.unknown(), { error: 'a list' });

/** The texts of a label; every other key has a reader of its own. */
const textKeys = [
  'id',
  'name',
  'maker',
  'category',
  'gtin',
  'readOn',
  'readAt',
  'notSignificantSourceOf',
  'statement',
  'unsaltedVersionOf',
] as const satisfies readonly (keyof PrintedLabel & keyof LabelJson)[];

type Json = Readonly<Record<string, unknown>>;

/** No earlier form has been written yet. */
const steps: readonly FormStep[] = [];

/**
 * Reads label JSON as docs/formats.md describes it. A key nobody reads and a value of the wrong type are reported by
 * their place and left out; the rest of the label stands. There is no label without a panel, nor where `market`, `basis`
 * or `state` is given and not understood: a wrong guess there would make every figure wrong. Null is "not given". Never throws.
 */
export function labelFromJson(given: unknown): Reading<PrintedLabel | undefined, LabelIssueCode> {
  if (isNestedTooDeep(given))
    return {
      value: undefined,
      issues: [labelIssue('label-not-an-object', '', 'JSON that is nested deeper than 200 levels', 'a label as an object')],
    };
  const { value, issues: newer } = presentForm(given, steps);
  if (newer.length > 0) return { value: undefined, issues: newer };
  const issues: LabelIssue[] = [];
  const json = object.safeParse(value);
  if (!json.success) return { value: undefined, issues: [labelIssue('label-not-an-object', '', value, 'a label as an object')] };
  const label = json.data;
  reportUnknownKeys(label, labelShape, '', issues);
  const panel = readPanelJson(label.panel, 'panel', issues);
  const ownMarket = read(labelShape.market.optional().default('us'), label, 'market', '', issues);
  const ownBasis = read(labelShape.basis.optional().default(usualBasis(ownMarket)), label, 'basis', '', issues);
  const ownState = read(labelShape.state.optional().default('as-packaged'), label, 'state', '', issues);
  const reference = read(labelShape.referenceAmount.optional(), label, 'referenceAmount', '', issues);
  const printed: Partial<Record<(typeof textKeys)[number], string>> = {};
  for (const key of textKeys) {
    const words = read(labelShape[key].optional(), label, key, '', issues);
    if (words !== undefined) printed[key] = words;
  }
  const serving = readServingJson(label.serving, 'serving', issues) ?? {};
  const front = readList(label.front, 'front', issues, (words, where) => checked(textSchema, words, where, issues));
  const otherColumns = readList(label.otherColumns, 'otherColumns', issues, (column, where) =>
    readColumnJson(column, where, ownBasis, ownState, issues),
  );
  if (panel === undefined || ownMarket === undefined || ownBasis === undefined || ownState === undefined)
    return { value: undefined, issues };
  return {
    value: {
      ...printed,
      market: ownMarket,
      serving,
      basis: ownBasis,
      state: ownState,
      front,
      panel,
      otherColumns,
      ...(reference === undefined ? {} : { referenceAmount: reference }),
    },
    issues,
  };
}

/** EU and UK panels are per 100 g unless they say otherwise (Regulation (EU) 1169/2011, article 32); others per serving. */
function usualBasis(of: PrintedLabel['market'] | undefined): PrintedLabel['basis'] {
  return of === 'eu' || of === 'uk' ? 'per-100-g' : 'per-serving';
}

function readPanelJson(value: unknown, where: string, issues: LabelIssue[]): PrintedPanel | undefined {
  if (value === undefined || value === null) {
    issues.push(labelIssue('panel-missing', where, 'nothing', 'an object of printed figures by nutrient name'));
    return undefined;
  }
  const json = checked(object, value, where, issues);
  if (json === undefined) return undefined;
  const panel: Partial<Record<PanelKey, PrintedFigure>> = {};
  for (const key of Object.keys(json)) {
    const at = `${where}.${key}`;
    if (!isPanelKey(key)) issues.push(labelIssue('key-not-known', at, key, 'a nutrient name from docs/formats.md; this one is left alone'));
    else {
      const printed = read(figureSchema.optional(), json, key, `${where}.`, issues);
      if (printed !== undefined) panel[key] = printed;
    }
  }
  return panel;
}

function readServingJson(value: unknown, where: string, issues: LabelIssue[]): PrintedServing | undefined {
  if (value === undefined || value === null) return undefined;
  const json = checked(object, value, where, issues);
  if (json === undefined) return undefined;
  reportUnknownKeys(json, servingShape, `${where}.`, issues);
  const serving: Partial<Record<'grams' | 'milliliters' | 'perContainer', PrintedFigure>> = {};
  const household = read(servingShape.household.optional(), json, 'household', `${where}.`, issues);
  for (const key of ['grams', 'milliliters', 'perContainer'] as const) {
    const printed = read(servingShape[key].optional(), json, key, `${where}.`, issues);
    if (printed !== undefined) serving[key] = printed;
  }
  return { ...(household === undefined ? {} : { household }), ...serving };
}

function readColumnJson(
  value: unknown,
  where: string,
  labelBasis: PrintedColumn['basis'] | undefined,
  labelState: PrintedColumn['state'] | undefined,
  issues: LabelIssue[],
): PrintedColumn | undefined {
  const json = checked(object, value, where, issues);
  if (json === undefined) return undefined;
  reportUnknownKeys(json, columnShape, `${where}.`, issues);
  const panel = readPanelJson(json.panel, `${where}.panel`, issues);
  const columnBasis = read(columnShape.basis.optional().default(labelBasis ?? 'per-serving'), json, 'basis', `${where}.`, issues);
  const columnState = read(columnShape.state.optional().default(labelState ?? 'as-packaged'), json, 'state', `${where}.`, issues);
  const serving = readServingJson(json.serving, `${where}.serving`, issues);
  if (panel === undefined || columnBasis === undefined || columnState === undefined) return undefined;
  return { basis: columnBasis, state: columnState, panel, ...(serving === undefined ? {} : { serving }) };
}

function readList<Item>(
  value: unknown,
  where: string,
  issues: LabelIssue[],
  readItem: (item: unknown, where: string) => Item | undefined,
): readonly Item[] {
  if (value === undefined || value === null) return [];
  const items: Item[] = [];
  for (const [index, each] of (checked(list, value, where, issues) ?? []).entries()) {
    const item = readItem(each, `${where}[${index}]`);
    if (item !== undefined) items.push(item);
  }
  return items;
}

function read<Schema extends z.ZodType>(
  schema: Schema,
  json: Json,
  key: string,
  prefix: string,
  issues: LabelIssue[],
): z.output<Schema> | undefined {
  const value = Object.hasOwn(json, key) ? json[key] : undefined;
  return checked(schema, value === null ? undefined : value, prefix + key, issues);
}

function checked<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
  where: string,
  issues: LabelIssue[],
): z.output<Schema> | undefined {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const first = result.error.issues[0];
  const expected = first?.message ?? 'a value from docs/formats.md';
  const code = first?.code === 'invalid_value' || first?.code === 'custom' ? 'value-not-allowed' : 'value-of-wrong-type';
  issues.push(labelIssue(code, where, value, expected));
  return undefined;
}

function reportUnknownKeys(json: Json, known: Readonly<Record<string, unknown>>, prefix: string, issues: LabelIssue[]): void {
  for (const key of Object.keys(json)) {
    if (!Object.hasOwn(known, key))
      issues.push(labelIssue('key-not-known', prefix + key, key, 'a key from docs/formats.md; this one is left alone'));
  }
}
