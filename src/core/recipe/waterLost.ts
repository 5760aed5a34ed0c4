import type { PrintedServingFacts } from './printedServing.ts';

/**
 * How dry the finished food is: fat, carbohydrate and protein over its mass. Where one of them is not printed the food may be
 * dry altogether, so that a figure which comes to a label never gives a cap more room than its absence did.
 */
export function dryShare({ servingG, printed }: PrintedServingFacts): number {
  let grams = 0;
  for (const key of ['fatG', 'carbohydrateG', 'proteinG'] as const) {
    const range = printed[key];
    if (range === undefined) return 1;
    grams += (range.lo + Math.min(range.hi, range.lo + 1)) / 2;
  }
  return Math.min(1, grams / ((servingG.lo + servingG.hi) / 2));
}

/**
 * The most water that can have left a serving, in grams: what is dry may have been anything, what is wet was hardly boiled
 * down, since makers put in concentrates instead (own decision; a soup at most a third of itself, a bread as much as itself).
 */
export function mostWaterLost(facts: PrintedServingFacts): number {
  const dry = dryShare(facts);
  return facts.servingG.hi * (dry > 0.78 ? 12 : 0.1 + 1.3 * dry);
}

/** What leaves typically, for the prior only. */
export function typicalWaterLost(facts: PrintedServingFacts): number {
  const dry = dryShare(facts);
  return ((facts.servingG.lo + facts.servingG.hi) / 2) * (dry > 0.78 ? 3 : 0.03 + 0.25 * dry);
}
