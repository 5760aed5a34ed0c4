import { type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

/**
 * Relative phosphate-binding coefficients: g of calcium carbonate that bind as much as 1 g of the binder (lanthanum: of the element).
 * Daugirdas, Finn, Emmett, Chertow, Semin Dial 2011 (journal from memory). Iron binders are left out: the figures are per tablet.
 */
const bindingPerGram = {
  'calcium-carbonate': 1,
  'calcium-acetate': 1,
  'magnesium-carbonate-anhydrous': 1.7,
  'magnesium-carbonate-hydrated': 1.3,
  lanthanum: 2,
  sevelamer: 0.75,
  'aluminum-hydroxide': 1.5,
  'aluminum-carbonate': 1.9,
} as const;

export type PhosphateBinder = keyof typeof bindingPerGram;

export const phosphateBinderFacts: FormulaFacts = {
  title: 'Phosphate binder equivalent dose',
  unit: 'g calcium carbonate',
  sources: [{ kind: 'paper', text: 'Daugirdas, Semin Dial 2011', toBeConfirmed: true }],
  cautions: ['Information for the prescriber only: never a reason to start, stop or change a dose.'],
};

/** Equivalent dose in g of calcium carbonate a day. 6 × 800 mg sevelamer: 3.6 g. 3 × 1000 mg lanthanum: 6.0 g. Source: Daugirdas 2011. */
export function phosphateBinderEquivalentG(binder: PhosphateBinder, tabletMg: number, tabletsPerDay: number): Computed {
  return (
    firstImpossible(['tabletMg', tabletMg, 1, 3000, 'mg'], ['tabletsPerDay', tabletsPerDay, 0, 40, 'a day']) ??
    computed((tabletMg / 1000) * tabletsPerDay * bindingPerGram[binder])
  );
}
