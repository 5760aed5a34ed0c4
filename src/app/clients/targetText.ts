import { type Limit, type TargetItem, targetUnits } from '#core/client/prescription/target.ts';
import { householdWords, rangeWords } from '#core/client/prescription/targetWords.ts';
import { type Interval, type IntervalJson, intervalToJson } from '#core/quantity/interval.ts';

/** "38.5 – 42 g a day", "under 2300 mg a day", "at least 25 g a day", "at most 1000 mL (4 cups, 33 fl oz) a day", "none named on the label". */
export function figureText(item: TargetItem, range: Interval, limit: Limit): string {
  const unit = targetUnits[item];
  const figure = rangeWords(unit, range, limit);
  if (unit === 'named on the label') return figure;
  return `${figure}${item === 'fluid' ? householdWords(range, limit) : ''} a day`;
}

/** An open end as null. */
export function rangeOut(range: Interval): [number, number | null] {
  const [lo, hi]: IntervalJson = intervalToJson(range);
  return [lo, hi];
}
