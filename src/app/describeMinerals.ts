import type { ReadLabel } from '#core/label/label.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { explainRecipe, questionForMaker } from '#core/recipe/explainRecipe.ts';
import type { MineralRange } from '#core/recipe/minerals.ts';
import { servingText } from './describeFood.ts';
import type { Estimated } from './minerals.ts';
import type { FoodRow, LabelRow } from './store.ts';

const caution =
  'An estimate from the ingredient list, the panel and a composition table; it is no analysis. Sure means: if the printed figures hold to their rounding and the ingredients to the table. The 20 % that compliance allows (21 CFR 101.9(g)) is not in it. Labs decide, and the kidney team.';

/** Potassium of 385 real labels that print it, hidden and estimated (docs/minerals.md, "How good it is"). */
const checked =
  'Checked on 385 real labels with their potassium hidden: the likely value was near for 42 in 100, “nine times in ten” held for 70, “surely” for 87.';

/** An estimate as the food screen shows it: whole milligrams, ranges outward, sentences ready to read. */
export function describeMinerals(food: FoodRow, { printed }: LabelRow, label: ReadLabel, estimate: Estimated) {
  if (estimate.kind === 'cannot-be-bounded') return { kind: estimate.kind, because: estimate.because };
  const serving = servingText(printed.serving) ?? 'one serving';
  const { lo, hi } = estimate.servingG;
  const grams = (lo + hi) / 2;
  const row = (name: string, nutrient: 'phosphorusMg' | 'potassiumMg', range: MineralRange, added: MineralRange) => ({
    name,
    isPrinted: label.amounts[nutrient].kind === 'known',
    ...shown(range),
    per100G: shown(scaled(range, 100 / grams)),
    added: shown(added),
  });
  return {
    kind: estimate.kind,
    servingText: serving,
    minerals: [
      row('phosphorus', 'phosphorusMg', estimate.phosphorus, estimate.addedPhosphorus),
      row('potassium', 'potassiumMg', estimate.potassium, estimate.addedPotassium),
    ],
    absorbedPhosphorusMg: [floorTo(estimate.absorbedPhosphorus.lo, 0), ceilTo(estimate.absorbedPhosphorus.hi, 0)] as [number, number],
    sentences: [...explainRecipe(estimate)],
    question: questionForMaker(food.name, serving.replace(/ \(([^)]*)\)$/, ', $1'), estimate),
    caution,
    checked,
  };
}

function shown({ sure, likely }: MineralRange) {
  return {
    sureMg: [floorTo(sure.lo, 0), ceilTo(sure.hi, 0)] as [number, number],
    likelyMg: [floorTo(likely.lo, 0), roundHalfUp(likely.mid, 0), ceilTo(likely.hi, 0)] as [number, number, number],
  };
}

function scaled({ sure, likely }: MineralRange, factor: number): MineralRange {
  return {
    sure: { lo: sure.lo * factor, hi: sure.hi * factor },
    likely: { lo: likely.lo * factor, mid: likely.mid * factor, hi: likely.hi * factor },
  };
}
