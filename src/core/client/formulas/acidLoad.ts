import {
  type Computed,
  computed,
  type FormulaFacts,
  firstImpossible,
  phosphorusMgInput,
  potassiumMgInput,
  proteinGInput,
} from './computed.ts';
import { potassiumMmolFromMg } from './urineMinerals.ts';

export const potentialRenalAcidLoadFacts: FormulaFacts = {
  title: 'Potential renal acid load (PRAL)',
  unit: 'mEq/day',
  sources: [{ kind: 'paper', text: 'Remer, Manz, J Am Diet Assoc 1995', secondHand: true }],
  cautions: ['Positive is acid.', 'Never a reason to push fruit when potassium is high.'],
};

export const netEndogenousAcidFacts: FormulaFacts = {
  title: 'Net endogenous acid production (NEAP)',
  unit: 'mEq/day',
  sources: [{ kind: 'paper', text: 'Frassetto 1998', toBeConfirmed: true }],
  cautions: ['Not defined without potassium.'],
};

/**
 * PRAL in mEq/day: 0.49 protein g + 0.037 P mg − 0.021 K mg − 0.026 Mg mg − 0.013 Ca mg. 80 g, 1200, 2800, 300, 800 mg: +6.6.
 * Source: Remer, Manz 1995 (as quoted).
 */
export function potentialRenalAcidLoadMeq(day: {
  proteinG: number;
  phosphorusMg: number;
  potassiumMg: number;
  magnesiumMg: number;
  calciumMg: number;
}): Computed {
  const { proteinG, phosphorusMg, potassiumMg, magnesiumMg, calciumMg } = day;
  return (
    firstImpossible(
      proteinGInput(proteinG),
      phosphorusMgInput(phosphorusMg),
      potassiumMgInput(potassiumMg),
      ['magnesiumMg', magnesiumMg, 0, 5000, 'mg'],
      ['calciumMg', calciumMg, 0, 10_000, 'mg'],
    ) ?? computed(0.49 * proteinG + 0.037 * phosphorusMg - 0.021 * potassiumMg - 0.026 * magnesiumMg - 0.013 * calciumMg)
  );
}

/** NEAP in mEq/day: 54.5 × protein g / potassium mEq − 10.2. 80 g, 2800 mg (71.6 mEq): 50.7. Source: Frassetto 1998 (from memory). */
export function netEndogenousAcidMeq(proteinG: number, potassiumMg: number): Computed {
  const refused = firstImpossible(proteinGInput(proteinG), potassiumMgInput(potassiumMg), ['potassiumMg', potassiumMg, 1, 20_000, 'mg']);
  if (refused) return refused;
  const potassium = potassiumMmolFromMg(potassiumMg);
  return potassium.kind === 'refused' ? potassium : computed((54.5 * proteinG) / potassium.value - 10.2);
}
