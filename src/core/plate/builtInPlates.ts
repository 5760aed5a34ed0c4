import { recordOf } from '#core/json/recordOf.ts';
import type { ReadLabel } from '#core/label/label.ts';
import { knownExactly, unknown } from '#core/quantity/amount.ts';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import type { Companion, Plate } from './plate.ts';

/**
 * Dry pasta as the trade counts it: 2 oz (56 g), 200 kcal, 0 mg sodium (common practice, no source). The two figures
 * are exact; the trade says nothing of other nutrients, so they are unknown.
 */
const dryPasta: Companion = {
  food: { id: 'dry-pasta', name: 'Dry pasta, cooked without salt', label: dryPastaLabel() },
  portion: { grams: 56 },
};

function dryPastaLabel(): ReadLabel {
  const unknownAmounts = recordOf(nutrientKeys, () => unknown('no-label'));
  return {
    printed: {
      market: 'us',
      serving: { household: '2 oz', grams: 56 },
      basis: 'per-serving',
      state: 'as-packaged',
      front: [],
      panel: { energyKcal: 200, sodiumMg: 0 },
      otherColumns: [],
    },
    amounts: { ...unknownAmounts, energyKcal: knownExactly(200, 'reference'), sodiumMg: knownExactly(0, 'reference') },
    amountsFor: { servings: 1, grams: 56, household: { count: 2, measure: 'ounce' } },
    asPrinted: {},
    additives: [],
    findings: [],
    issues: [],
  };
}

/**
 * The plates that every workspace has. A rich sauce goes by the quarter cup, the reference amount of a minor main-entree
 * sauce (21 CFR 101.12(b)); a ladled one by the half cup, near the 125 g of a major main-entree sauce (same).
 * There is none of "one reference amount": a portion is what is eaten, and claims have a basis of their own.
 */
export const builtInPlates: readonly Plate[] = [
  { id: 'on-its-own', title: 'one serving on its own', portion: { servings: 1 }, companions: [] },
  { id: 'with-dry-pasta', title: 'one serving with 2 oz of dry pasta', portion: { servings: 1 }, companions: [dryPasta] },
  {
    id: 'quarter-cup-with-dry-pasta',
    title: 'a quarter cup of a rich sauce with 2 oz of dry pasta',
    portion: { measure: 'cup', count: 1 / 4 },
    companions: [dryPasta],
  },
  {
    id: 'half-cup-with-dry-pasta',
    title: 'half a cup of a ladled sauce with 2 oz of dry pasta',
    portion: { measure: 'cup', count: 1 / 2 },
    companions: [dryPasta],
  },
];
