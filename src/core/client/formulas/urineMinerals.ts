import { type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

export const urineMineralsFacts: FormulaFacts = {
  title: 'Sodium and potassium in a day’s urine',
  unit: 'mg/day',
  sources: [
    { kind: 'definition', text: 'molar mass' },
    { kind: 'paper', text: 'Nutrients 2016;8:444' },
  ],
  cautions: [
    'Urine holds about 90 % of sodium intake (to be confirmed) and 90 % of potassium intake, less surely in CKD.',
    'Only as good as the collection.',
  ],
};

const mgPerMmol = { sodium: 22.99, potassium: 39.1 } as const;

/** Sodium in mg from mmol: × 22.99. 140 mmol: 3219 mg. */
export function sodiumMgFromMmol(sodiumMmol: number): Computed {
  return mgFromMmol('sodium', sodiumMmol);
}

/** Potassium in mg from mmol: × 39.10. 62 mmol: 2424 mg. */
export function potassiumMgFromMmol(potassiumMmol: number): Computed {
  return mgFromMmol('potassium', potassiumMmol);
}

/** Sodium in mmol from mg. 2300 mg: 100 mmol. */
export function sodiumMmolFromMg(sodiumMg: number): Computed {
  return mmolFromMg('sodium', sodiumMg);
}

/** Potassium in mmol (and mEq) from mg. 3000 mg: 76.7 mmol. */
export function potassiumMmolFromMg(potassiumMg: number): Computed {
  return mmolFromMg('potassium', potassiumMg);
}

/** Table salt in g that holds this sodium: × 2.542 by molar mass. 3219 mg: 8.2 g. EU labels use 2.5 (`sodiumMgFromSaltG`). */
export function saltGFromSodiumMg(sodiumMg: number): Computed {
  return firstImpossible(['sodiumMg', sodiumMg, 0, 50_000, 'mg']) ?? computed((sodiumMg * 2.542) / 1000);
}

/** Intake in mg that a day's urine points to, at 90 % in urine. 2424 mg potassium: 2694 mg. From memory for sodium. */
export function intakeMgFromUrineMg(urineMg: number): Computed {
  return firstImpossible(['urineMg', urineMg, 0, 50_000, 'mg']) ?? computed(urineMg / 0.9);
}

function mgFromMmol(mineral: keyof typeof mgPerMmol, mmol: number): Computed {
  return firstImpossible([`${mineral}Mmol`, mmol, 0, 2000, 'mmol']) ?? computed(mmol * mgPerMmol[mineral]);
}

function mmolFromMg(mineral: keyof typeof mgPerMmol, mg: number): Computed {
  return firstImpossible([`${mineral}Mg`, mg, 0, 50_000, 'mg']) ?? computed(mg / mgPerMmol[mineral]);
}
