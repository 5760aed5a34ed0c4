import { type Computed, computed, type FormulaFacts, firstImpossible, refuse } from './computed.ts';

/** What the percent on a bag counts. */
export const dialysateLabels = ['dextrose', 'glucose'] as const;

/** A bag of glucose dialysate. US bags print dextrose (monohydrate) percent; EU bags print anhydrous glucose percent. */
export interface DialysateBag {
  readonly liters: number;
  readonly percent: number;
  readonly labeledAs: (typeof dialysateLabels)[number];
}

/** The same three solutions by both labels: 1.5 % dextrose is printed as 1.36 % glucose in the EU. */
const dextroseOfGlucosePercent: ReadonlyMap<number, number> = new Map([
  [1.36, 1.5],
  [2.27, 2.5],
  [3.86, 4.25],
]);

export const dialysateGlucoseFacts: FormulaFacts = {
  title: 'Energy from dialysate glucose',
  unit: 'kcal',
  sources: [{ kind: 'paper', text: 'hospital clinical nutrition manual 2013, quoting the renal pocket guide' }],
  cautions: [
    'The absorbed share really runs from 40 to 80 % and is always to be edited: CAPD 60 %, APD 40 % are the manual’s.',
    'Not for icodextrin or amino-acid bags.',
  ],
};

/** Absorbed share by method, hospital manual 2013. Others: CAPD 60 to 80 % (British Dietetic Association 2020), 70 % (diabetes text). */
export const absorbedShareByMethod = { capd: 0.6, apd: 0.4 } as const;

/** kcal in a gram of dextrose (monohydrate). Anhydrous glucose has about 3.75 (from memory); the two are never mixed. */
const kcalPerGramDextrose = 3.4;

export interface AbsorbedGlucose {
  readonly infusedG: number;
  readonly absorbedG: number;
  readonly energyKcal: number;
}

/**
 * Dextrose infused and absorbed in g, and its energy in kcal, of one day's bags. CAPD with 2 × 2 L of 1.5 %, 2 L of 2.5 % and 2 L of
 * 4.25 % at 60 %: 195 g infused, 117 g absorbed, 398 kcal. APD with 10 L of 2.5 % at 40 %: 100 g, 340 kcal.
 * An EU label (1.36, 2.27, 3.86 % glucose) counts as the dextrose solution it is; any other glucose percent is refused.
 * Source: hospital clinical nutrition manual 2013.
 */
export function absorbedGlucose(bags: readonly DialysateBag[], absorbedShare: number): Computed<AbsorbedGlucose> {
  const refusedShare = firstImpossible(['absorbedShare', absorbedShare, 0.1, 1, 'of 1']);
  if (refusedShare) return refusedShare;
  let infusedG = 0;
  for (const { liters, percent, labeledAs } of bags) {
    const dextrose = labeledAs === 'dextrose' ? percent : dextroseOfGlucosePercent.get(percent);
    if (dextrose === undefined) {
      return refuse('outside-rule', 'percent', `${percent} % glucose is no usual solution: expected 1.36, 2.27 or 3.86 %.`);
    }
    const refused = firstImpossible(['liters', liters, 0, 30, 'L'], ['percent', dextrose, 0.5, 4.25, '% dextrose']);
    if (refused) return refused;
    infusedG += dextrose * 10 * liters;
  }
  if (infusedG > 1500) return refuse('impossible', 'bags', `${infusedG} g of dextrose a day cannot be: check liters and percent.`);
  const absorbedG = infusedG * absorbedShare;
  return computed({ infusedG, absorbedG, energyKcal: absorbedG * kcalPerGramDextrose });
}

/**
 * Glucose absorbed in g per liter by Grodstein: 11.3 × mean dextrose in g/dL − 10.9. Mean 2.4375 g/dL: 16.64 g/L, so 133.2 g from 8 L.
 * Source: Grodstein 1981 (from memory).
 */
export function absorbedGlucoseGPerLiterGrodstein(meanDextroseGPerDl: number): Computed {
  return firstImpossible(['meanDextroseGPerDl', meanDextroseGPerDl, 1, 4.25, 'g/dL']) ?? computed(11.3 * meanDextroseGPerDl - 10.9);
}

/**
 * Glucose absorbed in g when the equilibration test is known: (1 − D/D0) × infused. D/D0 0.4 of 195 g: 117 g.
 * Source: KDOQI Nutrition 2000 (from memory).
 */
export function absorbedGlucoseGByEquilibration(infusedG: number, dialysateToStart: number): Computed {
  return (
    firstImpossible(['infusedG', infusedG, 0, 1500, 'g'], ['dialysateToStart', dialysateToStart, 0, 1, 'of 1']) ??
    computed((1 - dialysateToStart) * infusedG)
  );
}
