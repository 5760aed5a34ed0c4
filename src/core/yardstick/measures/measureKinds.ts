import type { z } from 'zod';
import { additive } from './additive.ts';
import { dailyValuePercent } from './dailyValuePercent.ts';
import { difference } from './difference.ts';
import { ingredient } from './ingredient.ts';
import { nutrient } from './nutrient.ts';
import { ratio } from './ratio.ts';

/** The measures that are a number, in the order in which forms offer them. A further one is a file beside this and a line here. */
export const numberKinds = {
  nutrient,
  difference,
  ratio,
  'daily-value-percent': dailyValuePercent,
} as const;

/** The measures that look for what must not be named. */
export const absenceKinds = { additive, ingredient } as const;

export const measureKinds = { ...numberKinds, ...absenceKinds } as const;

export type NumberKindName = keyof typeof numberKinds;
export type AbsenceKindName = keyof typeof absenceKinds;
export type MeasureKindName = keyof typeof measureKinds;

/** The measure of each kind, as its schema has it. */
export type MeasureOfKind = {
  readonly [Kind in MeasureKindName]: Readonly<z.output<ReturnType<(typeof measureKinds)[Kind]['schema']>>> & { readonly kind: Kind };
};

/** A measure that is a number. */
export type NumberMeasure = MeasureOfKind[NumberKindName];
/** A measure that looks for words on a label. */
export type AbsenceMeasure = MeasureOfKind[AbsenceKindName];
/** What a test looks at. */
export type Measure = NumberMeasure | AbsenceMeasure;
