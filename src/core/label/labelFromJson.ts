import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import type { PrintedColumn, PrintedLabel, PrintedPanel, PrintedServing, ReferenceAmount } from './label.ts';
import { type LabelIssue, type LabelIssueCode, labelIssue } from './labelIssue.ts';
import { isPanelKey } from './panel/readPanel.ts';

const text = z.string({ error: 'text' });
const figure = z.union([z.number(), z.string()], { error: 'a number, or the words as printed' });
const market = z.enum(['us', 'ca', 'eu', 'uk'], { error: 'one of us, ca, eu, uk' });
const basis = z.enum(['per-serving', 'per-100-g', 'per-100-ml'], { error: 'one of per-serving, per-100-g, per-100-ml' });
const state = z.enum(['as-packaged', 'as-prepared', 'drained'], { error: 'one of as-packaged, as-prepared, drained' });
const day = text.refine(isCalendarDay, { error: 'a day, such as 2026-10-14' });
const object = z.record(z.string(), z.unknown(), { error: 'an object' });
const list = z.array(z.unknown(), { error: 'a list' });

const referenceAmount = z.union(
  [
    z.string(),
    z.object({
      grams: z.number().positive().optional(),
      milliliters: z.number().positive().optional(),
      kind: z.enum(['individual', 'main-dish', 'meal']).optional(),
    }),
  ],
  { error: 'a key of the reference amounts, or { "grams": 55 }' },
);

/** How the texts of a label are checked; every other key of `labelKeys` has a reader of its own. */
const texts = {
  id: text,
  name: text,
  maker: text,
  category: text,
  gtin: text,
  readOn: day,
  readAt: text,
  notSignificantSourceOf: text,
  statement: text,
  unsaltedVersionOf: text,
} as const;

type TextKey = keyof typeof texts;

const textKeys = Object.keys(texts) as readonly TextKey[];

const labelKeys: ReadonlySet<string> = new Set([
  ...textKeys,
  'market',
  'serving',
  'basis',
  'state',
  'front',
  'panel',
  'referenceAmount',
  'otherColumns',
]);
const servingKeys: ReadonlySet<string> = new Set(['household', 'grams', 'milliliters', 'perContainer']);
const columnKeys: ReadonlySet<string> = new Set(['basis', 'state', 'serving', 'panel']);

type Json = Readonly<Record<string, unknown>>;

/**
 * Reads label JSON as docs/formats.md describes it. A key nobody reads and a value of the wrong type are reported by
 * their place and left out; the rest of the label stands. There is no label without a panel, nor where `market`, `basis`
 * or `state` is given and not understood: a wrong guess there would make every figure wrong. Null is "not given". Never throws.
 */
export function labelFromJson(value: unknown): Reading<PrintedLabel | undefined, LabelIssueCode> {
  const issues: LabelIssue[] = [];
  const json = object.safeParse(value);
  if (!json.success) return { value: undefined, issues: [labelIssue('label-not-an-object', '', value, 'a label as an object')] };
  const label = json.data;
  reportUnknownKeys(label, labelKeys, '', issues);
  const panel = readPanelJson(label.panel, 'panel', issues);
  const ownMarket = read(market.default('us'), label, 'market', '', issues);
  const ownBasis = read(basis.default(usualBasis(ownMarket)), label, 'basis', '', issues);
  const ownState = read(state.default('as-packaged'), label, 'state', '', issues);
  const reference = read(referenceAmount.optional(), label, 'referenceAmount', '', issues) as ReferenceAmount | undefined;
  const printed: Partial<Record<TextKey, string>> = {};
  for (const key of textKeys) {
    const words = read(texts[key].optional(), label, key, '', issues);
    if (words !== undefined) printed[key] = words;
  }
  const serving = readServingJson(label.serving, 'serving', issues) ?? {};
  const front = readList(label.front, 'front', issues, (words, where) => checked(text, words, where, issues));
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
  const panel: Record<string, number | string> = {};
  for (const key of Object.keys(json)) {
    const at = `${where}.${key}`;
    if (!isPanelKey(key)) issues.push(labelIssue('key-not-known', at, key, 'a nutrient name from docs/formats.md; this one is left alone'));
    else {
      const printed = read(figure.optional(), json, key, `${where}.`, issues);
      if (printed !== undefined) panel[key] = printed;
    }
  }
  return panel;
}

function readServingJson(value: unknown, where: string, issues: LabelIssue[]): PrintedServing | undefined {
  if (value === undefined || value === null) return undefined;
  const json = checked(object, value, where, issues);
  if (json === undefined) return undefined;
  reportUnknownKeys(json, servingKeys, `${where}.`, issues);
  const household = read(text.optional(), json, 'household', `${where}.`, issues);
  const grams = read(figure.optional(), json, 'grams', `${where}.`, issues);
  const milliliters = read(figure.optional(), json, 'milliliters', `${where}.`, issues);
  const perContainer = read(figure.optional(), json, 'perContainer', `${where}.`, issues);
  return {
    ...(household === undefined ? {} : { household }),
    ...(grams === undefined ? {} : { grams }),
    ...(milliliters === undefined ? {} : { milliliters }),
    ...(perContainer === undefined ? {} : { perContainer }),
  };
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
  reportUnknownKeys(json, columnKeys, `${where}.`, issues);
  const panel = readPanelJson(json.panel, `${where}.panel`, issues);
  const columnBasis = read(basis.default(labelBasis ?? 'per-serving'), json, 'basis', `${where}.`, issues);
  const columnState = read(state.default(labelState ?? 'as-packaged'), json, 'state', `${where}.`, issues);
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

function reportUnknownKeys(json: Json, known: ReadonlySet<string>, prefix: string, issues: LabelIssue[]): void {
  for (const key of Object.keys(json)) {
    if (!known.has(key)) issues.push(labelIssue('key-not-known', prefix + key, key, 'a key from docs/formats.md; this one is left alone'));
  }
}

/** yyyy-mm-dd, and a day that the calendar has: not 2026-02-30. */
function isCalendarDay(words: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/u.test(words)) return false;
  const date = new Date(`${words}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(words);
}
