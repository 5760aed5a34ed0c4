import { describe, expect, test } from 'vitest';
import { additiveTable } from './additiveTable.ts';
import { spellingWords } from './lexicon.ts';

// IUPAC abridged standard atomic weights 2021 (Commission on Isotopic Abundances and Atomic Weights).
const atomicWeight: Readonly<Record<string, number>> = {
  H: 1.008,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  F: 18.998,
  Na: 22.99,
  Mg: 24.305,
  Al: 26.982,
  Si: 28.085,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
  Ca: 40.078,
  Mn: 54.938,
  Fe: 55.845,
  Cu: 63.546,
  Zn: 65.38,
  Se: 78.971,
  Br: 79.904,
  Mo: 95.95,
  I: 126.9,
};

/** Atoms of a formula with brackets and water of crystallization: "NaAl3H14(PO4)8·4H2O". */
function atoms(formula: string): Map<string, number> {
  const total = new Map<string, number>();
  for (const part of formula.split('·')) {
    const [, multiplier, rest] = /^(\d+(?:\.\d+)?)?(.*)$/.exec(part) as unknown as [string, string | undefined, string];
    const levels: Map<string, number>[] = [new Map()];
    for (const [token, element, count, close, closeCount] of rest.matchAll(/([A-Z][a-z]?)(\d*(?:\.\d+)?)|\(|(\))(\d*)/g)) {
      if (element !== undefined) add(levels.at(-1)!, element, Number(count || 1));
      else if (token === '(') levels.push(new Map());
      else if (close !== undefined) {
        const inner = levels.pop()!;
        for (const [name, amount] of inner) add(levels.at(-1)!, name, amount * Number(closeCount || 1));
      }
    }
    for (const [name, amount] of levels[0]!) add(total, name, amount * Number(multiplier ?? 1));
  }
  return total;
}
function add(counts: Map<string, number>, element: string, amount: number): void {
  counts.set(element, (counts.get(element) ?? 0) + amount);
}

function fractions(formula: string): { molarMass: number; phosphorus: number; potassium: number; sodium: number; calcium: number } {
  const counts = atoms(formula);
  let molarMass = 0;
  for (const [element, amount] of counts) molarMass += atomicWeight[element]! * amount;
  const share = (element: string): number => ((counts.get(element) ?? 0) * atomicWeight[element]!) / molarMass;
  return { molarMass, phosphorus: share('P'), potassium: share('K'), sodium: share('Na'), calcium: share('Ca') };
}

describe('mass fractions', () => {
  const rows = additiveTable.filter(row => row.formula !== null);
  test('[ADD-16] the table has 248 rows, 199 of them with a formula', () => {
    expect([additiveTable.length, rows.length]).toEqual([248, 199]);
  });
  test.each(rows.map(row => [row.name, row] as const))('[ADD-16] %s from its formula', (_, row) => {
    const computed = fractions(row.formula!);
    expect(row.molarMass).toBeCloseTo(computed.molarMass, 2);
    for (const element of ['phosphorus', 'potassium', 'sodium', 'calcium'] as const)
      expect(row.massFraction[element], element).toBeCloseTo(computed[element], 5);
    for (const hydrate of row.hydrates) {
      const wet = fractions(hydrate.formula);
      for (const element of ['phosphorus', 'potassium', 'sodium', 'calcium'] as const)
        expect(hydrate.massFraction[element], hydrate.formula).toBeCloseTo(wet[element], 4);
    }
  });
  // USDA SR28: 18372 baking soda 27,360 mg sodium per 100 g. KCl 52.4 % potassium: arithmetic, kidney nutrition tables.
  test('[ADD-16] against measured foods', () => {
    const fraction = (id: string) => additiveTable.find(row => row.id === id)!.massFraction;
    expect(fraction('sodium-bicarbonate').sodium! * 100_000).toBeCloseTo(27_367, -1);
    expect(Math.abs(fraction('sodium-bicarbonate').sodium! * 100_000 - 27_360)).toBeLessThan(20);
    expect(fraction('potassium-chloride').potassium).toBeCloseTo(0.524, 3);
  });
  // 9 CFR 424.21(c): at most 0.5 % phosphate in meat; added phosphorus at that limit, check value 51.
  test('[ADD-16] tripolyphosphate at 0.5 % adds 126 mg phosphorus per 100 g', () => {
    const fraction = additiveTable.find(row => row.id === 'sodium-tripolyphosphate')!.massFraction.phosphorus!;
    expect(Math.round(0.5 * 1000 * fraction)).toBe(126);
  });
});

describe('spellings', () => {
  test('[ADD-1] each spelling belongs to one row only', () => {
    const owner = new Map<string, string>();
    for (const row of additiveTable) {
      for (const spelling of row.spellings) {
        if (/[()]/.test(spelling)) continue;
        const key = spellingWords(spelling).join(' ');
        const other = owner.get(key);
        expect(other === undefined || other === row.id, `${key}: ${other} and ${row.id}`).toBe(true);
        owner.set(key, row.id);
      }
    }
    expect(owner.size).toBeGreaterThan(1_000);
  });
});
