import type { Total } from '#core/quantity/amount.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { isBoundTest } from './boundTest.ts';
import { amountText, decimalsOf } from './figureText.ts';
import { nutrientsOf } from './measures/measureFacts.ts';
import { addHelping, type Served } from './served.ts';
import type { Candidate, WayIn } from './wayIn.ts';
import type { Test, Verdict } from './yardstick.ts';

/** What a way in tells the totals of: energy and sodium always, and what the tests look at. */
export function nutrientsTold(tests: readonly Test[]): readonly Nutrient[] {
  return [...new Set<Nutrient>(['energyKcal', 'sodiumMg', ...tests.filter(isBoundTest).flatMap(test => nutrientsOf(test.measure))])];
}

/** "2 slices instead of 4 slices: 250 kcal, 175 mg sodium on the plate." */
export function wayIn(candidate: Candidate, verdict: Verdict, served: Served, told: readonly Nutrient[]): WayIn {
  const { surveyed, companions } = served;
  const totals: Partial<Record<Nutrient, Total>> = {};
  let text = '';
  for (const nutrient of told) {
    const total = surveyed.reduce((sum, helping) => addHelping(sum, helping, nutrient, true), companions.total(nutrient, true));
    totals[nutrient] = total;
    text += `${text && ', '}${totalText(nutrient, total, surveyed.length + companions.parts.length)}`;
  }
  const close = verdict.closeCall ? '; a close call' : '';
  return { ...candidate, what: `${candidate.action}: ${text} on the plate${close}.`, verdict, totals };
}

function totalText(nutrient: Nutrient, { judged, estimated, missing }: Total, foods: number): string {
  if (missing.length === foods) return `${nutrients[nutrient].name} unknown`;
  const atLeast = missing.length > 0 && judged.lo === judged.hi ? 'at least ' : '';
  return `${estimated ? 'estimated ' : ''}${atLeast}${amountText(nutrient, judged, decimalsOf(nutrient))}`;
}
