import { add, type Interval, interval, scale } from '#core/quantity/interval.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { type Computed, computed, type FormulaFacts, firstImpossible, phosphorusMgInput, proteinGInput, refuse } from './computed.ts';

export const phosphorusToProteinFacts: FormulaFacts = {
  title: 'Phosphorus to protein',
  unit: 'mg/g',
  sources: [
    { kind: 'common-practice', text: 'under 10 is favorable, common practice', saysPractice: true },
    { kind: 'guideline', text: 'KDOQI Bone Metabolism 2003: 10 to 12 for a whole diet', toBeConfirmed: true },
    { kind: 'paper', text: 'Clin J Am Soc Nephrol 2010;5:683: over 16 and mortality on hemodialysis', toBeConfirmed: true },
  ],
  cautions: ['Not defined without protein.'],
};

/** Bands of the cut-offs under 10, 12 and 16; what lies between is told as it is. */
export type PhosphorusToProteinBand = 'under 10' | '10 to 12' | 'over 12, to 16' | 'over 16';

export interface PhosphorusToProtein {
  readonly mgPerG: number;
  readonly band: PhosphorusToProteinBand;
}

/** Phosphorus in mg to g of protein. 1200 mg, 70 g: 17.1, over 16. No protein: not defined, never infinite. */
export function phosphorusToProtein(phosphorusMg: number, proteinG: number): Computed<PhosphorusToProtein> {
  const refused = firstImpossible(phosphorusMgInput(phosphorusMg), proteinGInput(proteinG));
  if (refused) return refused;
  const mgPerG = phosphorusMg / proteinG;
  if (!Number.isFinite(mgPerG)) {
    const refusal = refuse('not-defined', 'proteinG', 'Phosphorus to protein is not defined without protein.');
    return { ...refusal, found: `${proteinG} g`, expected: 'more than 0 g: the ratio is not defined without protein' };
  }
  return computed({ mgPerG, band: mgPerG < 10 ? 'under 10' : mgPerG <= 12 ? '10 to 12' : mgPerG <= 16 ? 'over 12, to 16' : 'over 16' });
}

/**
 * The phosphorus in mg that comes with protein, as a range of two papers: 78 + 11.8 × g (Kalantar-Zadeh 2010) and 128 + 14 × g (Boaz,
 * Smetana 1996), both from memory. 75 g: 963 to 1178 mg.
 */
export function phosphorusMgFromProteinG(proteinG: number): Computed<Interval> {
  return firstImpossible(proteinGInput(proteinG)) ?? computed(interval(78 + 11.8 * proteinG, 128 + 14 * proteinG));
}

/** Shares absorbed: additive (CJASN 2010;5:519), animal and plant (Ren Replace Ther 2017, s41100-017-0095-x, Table 1). */
const absorbedShare = { additive: interval(0.9, 1), animal: interval(0.4, 0.6), plant: interval(0.2, 0.4) } as const;

/**
 * Phosphorus absorbed in mg, always a band. 400 mg animal, 300 mg plant, 200 mg additive: 400 to 560 mg of 900 mg.
 * Against it: feeding studies recovered less of the additive (J Ren Nutr 2017 commentary).
 */
export function absorbedPhosphorusMg(from: { additiveMg: number; animalMg: number; plantMg: number }): Computed<Interval> {
  const refused = firstImpossible(phosphorusMgInput(from.additiveMg), phosphorusMgInput(from.animalMg), phosphorusMgInput(from.plantMg));
  if (refused) return refused;
  const { lo, hi } = add(
    add(scale(absorbedShare.additive, from.additiveMg), scale(absorbedShare.animal, from.animalMg)),
    scale(absorbedShare.plant, from.plantMg),
  );
  return computed(interval(cleanFloat(lo), cleanFloat(hi)));
}
