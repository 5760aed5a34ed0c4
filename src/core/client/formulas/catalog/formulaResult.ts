import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import { ceilTo, cleanFloat, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { type Computed, computed } from '../computed.ts';

/** How a result is named and shown: a figure or a range with its unit, or words. */
export interface ResultFacts {
  readonly label: string;
  readonly unit?: string;
  readonly decimals?: number;
}

/** What a formula gives, at full precision; what is not known is left out. */
export type FormulaFigures<Name extends string = string> = { readonly [Key in Name]?: number | Interval | string | undefined };

interface Shown {
  readonly name: string;
  readonly label: string;
  /** Ready to be read, with its unit: "26.8 kg/m²", "800 – 1300 mL/day". */
  readonly text: string;
}

export type ShownResult =
  | (Shown & { readonly kind: 'figure'; readonly value: number; readonly rounded: number; readonly unit: string })
  | (Shown & { readonly kind: 'range'; readonly range: Interval; readonly rounded: Interval; readonly unit: string })
  | (Shown & { readonly kind: 'words' });

export type FormulaResult = readonly ShownResult[];

/** Figures are rounded half up for display, ranges outward; both keep their full precision beside it. */
export function resultsShown<Name extends string>(
  facts: Readonly<Record<Name, ResultFacts>>,
  figures: FormulaFigures<Name>,
): FormulaResult {
  const given: Readonly<Record<string, number | Interval | string | undefined>> = figures;
  return Object.entries<ResultFacts>(facts).flatMap(([name, { label, unit = '', decimals = 0 }]): ShownResult[] => {
    const value = given[name];
    if (value === undefined) return [];
    if (typeof value === 'string') return [{ kind: 'words', name, label, text: value }];
    if (typeof value === 'number') {
      const rounded = roundHalfUp(value, decimals);
      return [{ kind: 'figure', name, label, text: withUnit(shown(rounded, decimals), unit), value: cleanFloat(value), rounded, unit }];
    }
    const rounded = { lo: floorTo(value.lo, decimals), hi: ceilTo(value.hi, decimals) };
    return [{ kind: 'range', name, label, text: withUnit(rangeShown(rounded, decimals), unit), range: value, rounded, unit }];
  });
}

/** A result that a source prints, in words. */
export function printedWords(
  printed: number | readonly [lo: number, hi: number] | string,
  { unit = '', decimals = 0 }: ResultFacts,
): string {
  if (typeof printed === 'string') return printed;
  const text = typeof printed === 'number' ? shown(printed, decimals) : rangeShown({ lo: printed[0], hi: printed[1] }, decimals);
  return withUnit(text, unit);
}

/** "26.8 kg/m²", "10.0%", "1.49". */
export function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === '%' ? `${text}%` : `${text} ${unit}`;
}

function shown(value: number, decimals: number): string {
  return value.toFixed(decimals).replace('-', '−');
}

function rangeShown(range: Interval, decimals: number): string {
  return isOpenEnded(range) ? `at least ${shown(range.lo, decimals)}` : `${shown(range.lo, decimals)} – ${shown(range.hi, decimals)}`;
}

/** A formula that gives one result. */
export function oneFigure<const Name extends string>(name: Name, outcome: Computed<number | Interval>): Computed<FormulaFigures<Name>> {
  return outcome.kind === 'refused' ? outcome : computed(only(name, outcome.value));
}

function only<Name extends string>(name: Name, value: number | Interval): FormulaFigures<Name>;
function only(name: string, value: number | Interval): FormulaFigures {
  return { [name]: value };
}
