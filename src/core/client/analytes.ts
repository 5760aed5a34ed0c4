/**
 * Every laboratory result the workbench reads: canonical unit first, and how to get there from the other units it may come in.
 * Factors: facts as published with the SI conversion of each analyte (SI = conventional × factor); HbA1c is the IFCC line (from memory).
 * `possible` is what a living adult can have, wide on purpose (own decision): outside it is a slip of unit or of the finger.
 */
export interface AnalyteFacts {
  readonly name: string;
  /** The unit that everything is compared in. */
  readonly unit: string;
  /** The other units, with what to multiply by to get the canonical one. */
  readonly from: Readonly<Record<string, number>>;
  readonly possible: readonly [lo: number, hi: number];
}

const mEq = { 'mEq/L': 1 } as const;

export const analytes = {
  potassium: { name: 'potassium', unit: 'mmol/L', from: mEq, possible: [1.5, 10] },
  sodium: { name: 'sodium', unit: 'mmol/L', from: mEq, possible: [90, 200] },
  chloride: { name: 'chloride', unit: 'mmol/L', from: mEq, possible: [50, 170] },
  bicarbonate: { name: 'bicarbonate', unit: 'mmol/L', from: mEq, possible: [2, 60] },
  phosphate: { name: 'phosphate', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.3229 }, possible: [0.2, 20] },
  calcium: { name: 'calcium, total', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.2495 }, possible: [3, 20] },
  correctedCalcium: { name: 'calcium, corrected', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.2495 }, possible: [3, 20] },
  ionizedCalcium: { name: 'calcium, ionized', unit: 'mmol/L', from: {}, possible: [0.4, 2.5] },
  pth: { name: 'PTH, intact', unit: 'pg/mL', from: { 'ng/L': 1, 'pmol/L': 1 / 0.106 }, possible: [0.5, 6000] },
  albumin: { name: 'albumin', unit: 'g/dL', from: { 'g/L': 0.1 }, possible: [0.5, 7] },
  prealbumin: { name: 'prealbumin', unit: 'mg/dL', from: { 'mg/L': 0.1 }, possible: [1, 80] },
  cholesterol: { name: 'cholesterol, total', unit: 'mg/dL', from: { 'mmol/L': 38.67 }, possible: [30, 1000] },
  ureaNitrogen: { name: 'urea nitrogen (BUN)', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.357 }, possible: [1, 300] },
  creatinine: { name: 'creatinine', unit: 'mg/dL', from: { 'umol/L': 1 / 88.4 }, possible: [0.1, 30] },
  egfr: { name: 'eGFR', unit: 'mL/min/1.73 m²', from: { 'mL/min/{1.73_m2}': 1 }, possible: [1, 200] },
  hba1c: { name: 'HbA1c', unit: '%', from: { 'mmol/mol': 0.09148 }, possible: [2.5, 20] },
  glucose: { name: 'glucose', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.0555 }, possible: [10, 2000] },
  hemoglobin: { name: 'hemoglobin', unit: 'g/dL', from: { 'g/L': 0.1 }, possible: [2, 25] },
  ferritin: { name: 'ferritin', unit: 'ng/mL', from: { 'ug/L': 1 }, possible: [1, 50_000] },
  transferrinSaturation: { name: 'transferrin saturation', unit: '%', from: {}, possible: [1, 100] },
  magnesium: { name: 'magnesium', unit: 'mg/dL', from: { 'mmol/L': 1 / 0.4114 }, possible: [0.3, 12] },
  cReactiveProtein: { name: 'C-reactive protein', unit: 'mg/L', from: { 'mg/dL': 10 }, possible: [0, 600] },
  urate: { name: 'urate', unit: 'mg/dL', from: { 'umol/L': 1 / 59.48 }, possible: [0.5, 25] },
  vitaminD25: { name: '25-OH vitamin D', unit: 'ng/mL', from: { 'nmol/L': 1 / 2.496 }, possible: [1, 300] },
  /** For trends alone: its category is told by the unit it came in (`albuminuriaCategory`), never converted first. */
  urineAcr: { name: 'urine albumin to creatinine', unit: 'mg/g', from: { 'mg/mmol': 1 / 0.113 }, possible: [0, 30_000] },
  urineSodium: { name: 'urine sodium of 24 h', unit: 'mmol/(24.h)', from: {}, possible: [0, 800] },
  urinePotassium: { name: 'urine potassium of 24 h', unit: 'mmol/(24.h)', from: {}, possible: [0, 400] },
  urineUreaNitrogen: { name: 'urine urea nitrogen of 24 h', unit: 'g/(24.h)', from: {}, possible: [0, 60] },
  spKtV: { name: 'spKt/V', unit: '{ratio}', from: {}, possible: [0.1, 4] },
  ureaReduction: { name: 'urea reduction ratio', unit: '%', from: {}, possible: [5, 98] },
  proteinCatabolicRate: { name: 'nPCR', unit: 'g/kg/d', from: {}, possible: [0.1, 4] },
} as const satisfies Record<string, AnalyteFacts>;

export type Analyte = keyof typeof analytes;

export const analyteKeys = Object.keys(analytes) as readonly Analyte[];

export function analyteFacts(analyte: Analyte): AnalyteFacts {
  return analytes[analyte];
}
