import type { Client } from '../../api.ts';

/** Meals of a day, each with its part in percent as it is typed. */
export interface TypedMeals {
  readonly meals: readonly { readonly name: string; readonly percent: string }[];
}

export function typedMeals(pattern: NonNullable<Client['mealPattern']>): TypedMeals {
  return { meals: pattern.map(({ name, percent }) => ({ name, percent: String(percent) })) };
}

/** 100 where the parts make a day. */
export function totalPercent({ meals }: TypedMeals): number {
  return meals.reduce((sum, { percent }) => sum + Number(percent), 0);
}
