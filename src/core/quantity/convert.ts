/**
 * Unit conversions at the edge, each named target-from-source with its authority. Inside the core only the
 * canonical units of `nutrients.ts` are used.
 */

/** Regulation (EU) 1169/2011, Annex I: salt = sodium × 2.5. 1.2 g salt is 480 mg sodium. Labels use 2.5, not 2.54. */
export function sodiumMgFromSaltG(saltG: number): number {
  return (saltG / 2.5) * 1000;
}

/** Thermochemical calorie: 1 kcal = 4.184 kJ exactly. EU panels print both from separate factors; read kcal where it is printed. */
export function energyKcalFromKj(kj: number): number {
  return kj / 4.184;
}

/** 1 international unit of vitamin D is 0.025 mcg (21 CFR 101.9(c)(8)(iv), note on units). 400 IU is 10 mcg. */
export function vitaminDMcgFromIu(iu: number): number {
  return iu * 0.025;
}

/** One gram of water is one millilitre, as kitchen and clinic practice have it (common practice, no source). */
export function waterMlFromWaterG(waterG: number): number {
  return waterG;
}

/** Avoirdupois ounce, NIST Handbook 44, appendix C: 28.349523125 g exactly. */
export const gramsPerAvoirdupoisOunce = 28.349523125;

/** Household measures for label use, 21 CFR 101.9(b)(5)(viii): mL each; the ounce is 28 g there. */
export const labelMillilitersPerMeasure = { teaspoon: 5, tablespoon: 15, cup: 240, 'fluid-ounce': 30 } as const;

export const labelGramsPerOunce = 28;
