import type { Limit, TargetItem } from '#core/client/prescription/target.ts';
import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';

/** A signed target as far as it bounds food. */
export interface FoodTarget {
  readonly item: TargetItem;
  readonly range?: Interval | undefined;
  readonly limit?: Limit | undefined;
}

/** Whether a signed figure is a most: a food may use it up. "At least" is none, and neither is an open end. */
export function isMost({ range, limit }: FoodTarget): boolean {
  return range !== undefined && limit !== 'at-least' && !isOpenEnded(range);
}

/** Whether a signed figure is a need alone: "at least 80 g", "2,500 mg and more". A range from 60 to 80 g is to be kept within, and asks for no more. */
export function isNeed({ range, limit }: FoodTarget): boolean {
  return range !== undefined && range.lo > 0 && (limit === 'at-least' || isOpenEnded(range));
}
