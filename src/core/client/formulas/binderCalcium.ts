import { type Computed, computed, firstImpossible } from './computed.ts';

/** IUPAC abridged standard atomic weights 2021 (Commission on Isotopic Abundances and Atomic Weights). */
const atomicWeight = { H: 1.008, C: 12.011, O: 15.999, Ca: 40.078 } as const;
type Element = keyof typeof atomicWeight;

/** Atoms of each element in one unit of a compound. */
type Atoms = Readonly<Partial<Record<Element, number>>>;

/** CaCO3, and Ca(CH3COO)2 without water: what the tablets are labeled by. */
const atomsOf = {
  'calcium-carbonate': { Ca: 1, C: 1, O: 3 },
  'calcium-acetate': { Ca: 1, C: 4, H: 6, O: 4 },
} as const satisfies Readonly<Record<string, Atoms>>;

export type CalciumBinder = keyof typeof atomsOf;

export function isCalciumBinder(name: string): name is CalciumBinder {
  return name in atomsOf;
}

/** The part of a calcium compound that is calcium, from its formula. Calcium carbonate: 40.078 / 100.086 = 0.4004. */
export function calciumShare(binder: CalciumBinder): number {
  const atoms: Atoms = atomsOf[binder];
  const masses = Object.entries(atoms).map(([element, count]) => atomicWeight[element as Element] * count);
  return (atomicWeight.Ca * (atoms.Ca ?? 0)) / masses.reduce((sum, mass) => sum + mass, 0);
}

/** Elemental calcium in mg a day. 6 × 667 mg calcium acetate: 1014. Source: formula and atomic weights. */
export function binderCalciumMg(binder: CalciumBinder, unitMg: number, unitsPerDay: number): Computed {
  return (
    firstImpossible(['unitMg', unitMg, 1, 3000, 'mg'], ['unitsPerDay', unitsPerDay, 0, 40, 'a day']) ??
    computed(unitMg * unitsPerDay * calciumShare(binder))
  );
}
