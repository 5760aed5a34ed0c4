import type { Source } from '#core/client/rules/source.ts';

/** Why a formula does not answer. Closed list; `told` says it in words. */
export type RefusedWhy =
  | 'not-a-number'
  | 'impossible'
  | 'no-unit'
  | 'unit-not-known'
  | 'unit-in-question'
  | 'under-18'
  | 'outside-rule'
  | 'not-defined';

export interface Refused {
  readonly kind: 'refused';
  readonly why: RefusedWhy;
  /** The input that stands in the way. */
  readonly field: string;
  /** One sentence for the person: what was found and what is expected. */
  readonly told: string;
  /** The same as data, where a figure is out of its range: "700 kg", "20 to 400 kg". */
  readonly found?: string;
  readonly expected?: string;
}

/** What a formula gives: a value at full precision in the unit that its name says, or the reason why there is none. */
export type Computed<Value = number> = { readonly kind: 'computed'; readonly value: Value } | Refused;

/** What a formula is called, the unit of its result, where it comes from. How a result is rounded for display stands in the catalog. */
export interface FormulaFacts {
  readonly title: string;
  readonly unit: string;
  readonly sources: readonly Source[];
  /** When not to believe it. */
  readonly cautions: readonly string[];
}

export function computed<Value>(value: Value): Computed<Value> {
  return { kind: 'computed', value };
}

export function refuse(why: RefusedWhy, field: string, told: string): Refused {
  return { kind: 'refused', why, field, told };
}

/** One input with its possible range, both ends allowed. */
export type Input = readonly [field: string, value: number, lo: number, hi: number, unit: string];

/**
 * The first input that is no number or cannot be; undefined when all are possible. Ranges are what a living adult or a real
 * plan can have, wide on purpose (own decision). `firstImpossible(['weightKg', 700, 20, 400, 'kg'])` is refused.
 */
export function firstImpossible(...inputs: readonly Input[]): Refused | undefined {
  for (const [field, value, lo, hi, unit] of inputs) {
    if (!Number.isFinite(value)) return refuse('not-a-number', field, `${field} is not a number.`);
    if (value < lo || value > hi) {
      const [found, expected] = [`${shown(value)} ${unit}`.trim(), `${shown(lo)} to ${shown(hi)} ${unit}`.trim()];
      return { ...refuse('impossible', field, `${field} ${found} cannot be: expected ${expected}.`), found, expected };
    }
  }
  return undefined;
}

/** A figure that was converted has more digits than anybody typed: 84.0336134454 is told as 84.034. */
function shown(figure: number): number {
  return Number.isInteger(figure) ? figure : Number(figure.toPrecision(5));
}

export const weightKgInput = (weightKg: number, field = 'weightKg'): Input => [field, weightKg, 20, 400, 'kg'];
export const heightCmInput = (heightCm: number): Input => ['heightCm', heightCm, 100, 250, 'cm'];
export const albuminGPerDlInput = (albuminGPerDl: number): Input => ['albuminGPerDl', albuminGPerDl, 0.5, 7, 'g/dL'];
export const proteinGInput = (proteinG: number): Input => ['proteinG', proteinG, 0, 500, 'g'];
export const potassiumMgInput = (potassiumMg: number): Input => ['potassiumMg', potassiumMg, 0, 20_000, 'mg'];
export const phosphorusMgInput = (phosphorusMg: number): Input => ['phosphorusMg', phosphorusMg, 0, 10_000, 'mg'];
export const bunMgPerDlInput = (bunMgPerDl: number, field: string): Input => [field, bunMgPerDl, 1, 300, 'mg/dL'];
