import type { z } from 'zod';
import type { Total } from '#core/quantity/amount.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Bound } from '../bound.ts';

/** The zod of whoever reads JSON; screens know the kinds and need none. */
export type Zod = typeof z;
export type NutrientSchema = z.ZodEnum<{ [Key in Nutrient]: Key }>;

/** One nutrient's part in a value: what is counted, or what is taken off. */
export interface Term {
  readonly nutrient: Nutrient;
  readonly weight: number;
  readonly isTakenOff: boolean;
}

export type Totals = readonly [Total] | readonly [Total, Total];

/** The value over what is known. */
export interface MeasureValue {
  /** What is compared; absent when nothing is known, or when the value is not defined. */
  readonly judged?: Interval;
  /** What rounding allows. */
  readonly range?: Interval;
  /** Why there is no such value, whatever is known: "sodium to protein is not defined at zero protein". */
  readonly notDefined?: string;
  /** With parts missing: whether the true value is at least `judged`, because nothing is missing from what is taken off or divided by. */
  readonly isFloor: boolean;
}

/** The value at most (or at least) a figure, as a sum over foods against a limit. */
export interface LinearForm {
  readonly terms: readonly Term[];
  readonly limit: number;
}

/** What a sentence shows of a value. */
export interface ShownValue {
  readonly totals: Totals;
  readonly judged: Interval | undefined;
  /** Decimals of the value, and how many more are needed where the shown figures would not add up. */
  readonly decimals: number;
  readonly finer: number;
}

/** A nutrient that a measure takes beside its first, as a form asks for it. */
export interface NutrientField<Measure> {
  readonly title: string;
  readonly nutrient: Nutrient;
  readonly with: (nutrient: Nutrient) => Measure;
}

/** All that is asked of one measure that is a number. */
export interface MeasureFacts<Measure> {
  /** The nutrients it needs, in the order of its totals. */
  readonly nutrients: readonly [Nutrient] | readonly [Nutrient, Nutrient];
  /** The unit of its bound, slack and margin. */
  readonly unit: string;
  readonly decimals: (bound: Bound) => number;
  readonly value: (totals: Totals, foods: number) => MeasureValue;
  readonly linear: (figure: number) => LinearForm;
  /** The terms whose figures stand in the sentence and add up to the value; null where the sentence tells the value itself. */
  readonly shownTerms: readonly Term[] | null;
  /** Whether it stays the same in half of a food, so that no portion of the food by itself changes the verdict. */
  readonly isProportion: (figure: number) => boolean;
  /** "at most 140 mg", "sodium in mg no more than energy in kcal". */
  readonly boundWords: (bound: Bound) => string;
  /** "phosphorus to protein"; undefined where the bound's words name what is measured. */
  readonly subject: string | undefined;
  /** The same in few words, before the bound's, for the reason why a food is left out: "phosphorus". */
  readonly briefSubject: string | undefined;
  /** What was measured: "250 mg sodium against 240 kcal", "33% of the Daily Value of sodium (760 mg)". */
  readonly told: (shown: ShownValue) => string;
  /** Whether `told` says the bound as well: "250 mg sodium against 240 kcal". */
  readonly tellsBound: (bound: Bound) => boolean;
  /** The nutrients beside `nutrient` that a form asks for. */
  readonly otherFields: readonly NutrientField<Measure>[];
}

/** A kind of measure that is a number. */
export interface NumberKind<Schema extends z.ZodObject> extends NumberWords<Readonly<z.output<Schema>>> {
  readonly schema: (zod: Zod, nutrient: NutrientSchema) => Schema;
}

interface NumberWords<Measure> {
  /** What a form calls it. */
  readonly title: string;
  /** What a form begins with; `nutrient` is what was chosen before. */
  readonly usual: (nutrient: Nutrient) => Measure;
  readonly facts: (measure: Measure) => MeasureFacts<Measure>;
}

/** A kind by its schema, then what is asked of the measures that the schema takes. */
export function numberKind<Schema extends z.ZodObject>(
  schema: NumberKind<Schema>['schema'],
): (words: NumberWords<Readonly<z.output<Schema>>>) => NumberKind<Schema> {
  return words => ({ ...words, schema });
}
