import { type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

/** IUPAC abridged standard atomic weights 2021 (Commission on Isotopic Abundances and Atomic Weights). */
const atomicWeight = { H: 1.008, C: 12.011, O: 15.999, Ca: 40.078 } as const;

/** Atoms of each element in one unit of a compound. */
type Atoms = Readonly<Record<keyof typeof atomicWeight, number>>;

/** The part of a calcium compound that is calcium. CaCO3: 40.078 / 100.086 = 0.4004. */
function shareOf(atoms: Atoms): number {
  const mass = (element: keyof Atoms): number => atomicWeight[element] * atoms[element];
  return mass('Ca') / (mass('H') + mass('C') + mass('O') + mass('Ca'));
}

/** Calcium carbonate CaCO3: 40.04 %. Calcium acetate Ca(CH3COO)2 without water, by which tablets are labeled: 25.34 %. */
export const calciumShare = {
  'calcium-carbonate': shareOf({ Ca: 1, C: 1, H: 0, O: 3 }),
  'calcium-acetate': shareOf({ Ca: 1, C: 4, H: 6, O: 4 }),
} as const;

export type CalciumBinder = keyof typeof calciumShare;

export const binderCalciumFacts: FormulaFacts = {
  title: 'Calcium from a binder',
  unit: 'mg/day',
  sources: [{ kind: 'definition', text: 'chemical formula and IUPAC 2021 atomic weights' }],
  cautions: [
    'The strength is that of the compound: some labels print the calcium in it instead.',
    'How much of it is absorbed is another question. The dose is the prescriber’s.',
  ],
};

/** Elemental calcium in mg a day. 6 × 667 mg calcium acetate: 1014. Source: formula and atomic weights. */
export function binderCalciumMg(binder: CalciumBinder, unitMg: number, unitsPerDay: number): Computed {
  return (
    firstImpossible(['unitMg', unitMg, 1, 3000, 'mg'], ['unitsPerDay', unitsPerDay, 0, 60, 'a day']) ??
    computed(unitMg * unitsPerDay * calciumShare[binder])
  );
}
