import type { JsonOf } from '#core/json/jsonOf.ts';
import type { labelSchema } from '#core/label/labelJson.ts';
import { usPanelKeys } from '#core/label/panelKeys.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';

export const nameLines = ['name', 'maker', 'category', 'gtin', 'readOn', 'readAt'] as const;
export const servingLines = ['household', 'grams', 'milliliters'] as const;
const words = [...nameLines, 'notSignificantSourceOf', 'statement'] as const;

/** Label JSON, as it is sent and kept. */
export type Label = JsonOf<typeof labelSchema>;

/** A label as the form holds it: every line that it has, at the place that label JSON has for it; empty where nothing is printed. */
export interface TypedLabel extends Readonly<Record<(typeof words)[number], string>> {
  readonly serving: Readonly<Record<(typeof servingLines)[number], string>>;
  readonly panel: Readonly<Record<Nutrient, string>>;
  /** Why a label is corrected. */
  readonly reason: string;
}

export function typedLabel({ panel, serving = {}, ...printed }: Label): TypedLabel {
  return {
    ...typedLines(words, printed),
    serving: typedLines(servingLines, serving),
    panel: typedLines(usPanelKeys, panel),
    reason: '',
  };
}

/** The label of the form; what the form has no line for is carried over from the label that it began with. */
export function labelOf(typed: TypedLabel, start: Label): Label {
  const { id: _id, serving = {}, panel, ...printed } = start;
  return {
    ...without(words, printed),
    ...printedLines(words, typed),
    serving: { ...without(servingLines, serving), ...printedLines(servingLines, typed.serving) },
    panel: { ...without(usPanelKeys, panel), ...printedLines(usPanelKeys, typed.panel) },
  };
}

/** Whether the form has a line at this place of label JSON: "panel.sodiumMg". */
export function isLineOf(place: string): boolean {
  const [part = '', key = ''] = place.split('.');
  if (part === 'panel') return usPanelKeys.some(one => one === key);
  return part === 'serving' ? servingLines.some(one => one === key) : words.some(one => one === part);
}

type Lines<Key extends string> = Readonly<Record<Key, string>>;
type Figures<Key extends string> = { readonly [Name in Key]?: string | number };

function typedLines<Key extends string>(keys: readonly Key[], printed: Figures<Key>): Lines<Key> {
  return Object.assign({}, ...keys.map(key => ({ [key]: String(printed[key] ?? '') })));
}

function printedLines<Key extends string>(keys: readonly Key[], typed: Lines<Key>): Partial<Lines<Key>> {
  return Object.assign({}, ...keys.map(key => (typed[key].trim() === '' ? {} : { [key]: typed[key].trim() })));
}

function without<Part extends object>(keys: readonly string[], part: Part): Partial<Part> {
  return Object.assign({}, ...Object.entries(part).map(([key, value]) => (keys.includes(key) ? {} : { [key]: value })));
}
