import type { PlateFood, PlatePart } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import type { Total } from '#core/quantity/amount.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { isBoundTest } from './bound.ts';
import { rangeText } from './figureText.ts';
import { nutrientsOf } from './measured.ts';
import type { Candidate, WayIn } from './wayIn.ts';
import type { Test, Verdict } from './yardstick.ts';

/** What a way in tells the totals of: energy and sodium always, and what the tests look at. */
export function nutrientsTold(tests: readonly Test[]): readonly Nutrient[] {
  return [...new Set<Nutrient>(['energyKcal', 'sodiumMg', ...tests.filter(isBoundTest).flatMap(test => nutrientsOf(test.measure))])];
}

/** "2 slices instead of 4 slices: energy 250 kcal, sodium 175 mg on the plate." */
export function wayIn(candidate: Candidate, verdict: Verdict, food: PlateFood, told: readonly Nutrient[]): WayIn {
  const { plate, mixedWith, action } = candidate;
  const parts: readonly PlatePart[] = [{ food, portion: plate.portion }, ...(mixedWith ? [mixedWith] : []), ...plate.companions];
  const totals = told.map(nutrient => [nutrient, plateTotal(parts, nutrient)] as const);
  const text = totals.map(([nutrient, total]) => totalText(nutrient, total, parts.length)).join(', ');
  const close = verdict.closeCall ? '; a close call' : '';
  return { ...candidate, what: `${action}: ${text} on the plate${close}.`, verdict, totals: Object.fromEntries(totals) };
}

function totalText(nutrient: Nutrient, { judged, estimated, missing }: Total, foods: number): string {
  const { name, unit } = nutrients[nutrient];
  if (missing.length === foods) return `${name} unknown`;
  const amount = rangeText(judged, unit, 1);
  return `${estimated ? 'estimated ' : ''}${name} ${missing.length > 0 && judged.lo === judged.hi ? 'at least ' : ''}${amount}`;
}
