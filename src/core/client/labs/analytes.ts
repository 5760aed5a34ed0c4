import type { Setting } from '../setting.ts';

/**
 * Every laboratory result the workbench reads: canonical unit first, and how to get there from the other units it may come in.
 * Factors: facts as published with the SI conversion of each analyte (SI = conventional × factor); HbA1c is the IFCC line (from memory).
 */
export interface AnalyteFacts {
  readonly name: string;
  /** The unit that everything is compared in. */
  readonly unit: string;
  /** The other units, with what to multiply by to get the canonical one. */
  readonly from: Readonly<Record<string, number>>;
  /**
   * What a living adult can have, in the canonical unit, wide on purpose (own decision): outside it is a slip of unit or of the finger. It is
   * converted for the other units, unless `possibleIn` gives round figures of their own (care rules 5).
   */
  readonly possible: Span;
  readonly possibleIn?: Readonly<Record<string, Span>>;
  /** What is possible and still looks like a mix-up. */
  readonly ask?: readonly Ask[];
}

type Span = readonly [lo: number, hi: number];

/** A band of figures, as typed in `units`, that another meaning explains better. Ends belong to it, but for `over` and `under`. */
export interface Ask {
  readonly units: readonly string[];
  readonly from?: number;
  readonly to?: number;
  readonly over?: number;
  readonly under?: number;
  /** The unit that was meant, or another analyte, or a decimal point that was left out. */
  readonly meant: { readonly unit: string } | { readonly analyte: string } | 'decimal point';
  /** Only for these; for everybody when missing. */
  readonly settings?: readonly Setting[];
}

const mEq = { 'mEq/L': 1 } as const;
const perLiter = ['mmol/L', 'mEq/L'];
const totalCalcium = {
  unit: 'mg/dL',
  from: { 'mmol/L': 1 / 0.2495 },
  possible: [4.8, 16],
  possibleIn: { 'mmol/L': [1.2, 4] },
  ask: [
    { units: ['mmol/L'], from: 1, to: 1.4, meant: { analyte: 'ionized calcium' } },
    // The same band in the other unit: 1.0 to 1.4 mmol/L is 4.01 to 5.61 mg/dL.
    { units: ['mg/dL'], from: 4, to: 5.6, meant: { analyte: 'ionized calcium' } },
  ],
} as const;

/** Possible figures and mix-ups of the analytes that care rules 5 lists are its own; the others are wider (own decision). */
export const analytes = {
  potassium: {
    name: 'potassium',
    unit: 'mmol/L',
    from: mEq,
    possible: [1.5, 9.5],
    ask: [{ units: perLiter, from: 35, to: 60, meant: 'decimal point' }],
  },
  sodium: { name: 'sodium', unit: 'mmol/L', from: mEq, possible: [100, 180] },
  chloride: { name: 'chloride', unit: 'mmol/L', from: mEq, possible: [50, 170] },
  bicarbonate: { name: 'bicarbonate', unit: 'mmol/L', from: mEq, possible: [5, 45] },
  phosphate: {
    name: 'phosphate',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.3229 },
    possible: [0.6, 15],
    possibleIn: { 'mmol/L': [0.2, 4] },
    ask: [
      { units: ['mmol/L'], over: 2.5, meant: { unit: 'mg/dL' } },
      { units: ['mg/dL'], under: 2, meant: { unit: 'mmol/L' } },
    ],
  },
  calcium: { name: 'calcium, total', ...totalCalcium },
  correctedCalcium: { name: 'calcium, corrected', ...totalCalcium },
  ionizedCalcium: { name: 'calcium, ionized', unit: 'mmol/L', from: {}, possible: [0.4, 2.5] },
  pth: {
    name: 'PTH, intact',
    unit: 'pg/mL',
    from: { 'ng/L': 1, 'pmol/L': 1 / 0.106 },
    possible: [1, 3500],
    possibleIn: { 'pmol/L': [0.1, 370] },
    // Everybody who is kept here has kidney disease.
    ask: [{ units: ['pg/mL', 'ng/L'], under: 10, meant: { unit: 'pmol/L' } }],
  },
  albumin: { name: 'albumin', unit: 'g/dL', from: { 'g/L': 0.1 }, possible: [1, 6] },
  prealbumin: { name: 'prealbumin', unit: 'mg/dL', from: { 'mg/L': 0.1 }, possible: [1, 80] },
  cholesterol: { name: 'cholesterol, total', unit: 'mg/dL', from: { 'mmol/L': 38.67 }, possible: [30, 1000] },
  ureaNitrogen: {
    name: 'urea nitrogen (BUN)',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.357 },
    possible: [2, 250],
    possibleIn: { 'mmol/L': [1, 90] },
    ask: [
      { units: ['mg/dL'], under: 10, meant: { unit: 'mmol/L' }, settings: ['hemodialysis', 'peritoneal-dialysis'] },
      { units: ['mmol/L'], over: 60, meant: { unit: 'mg/dL' } },
    ],
  },
  creatinine: {
    name: 'creatinine',
    unit: 'mg/dL',
    from: { 'umol/L': 1 / 88.4 },
    possible: [0.2, 28],
    possibleIn: { 'umol/L': [20, 2500] },
  },
  egfr: { name: 'eGFR', unit: 'mL/min/1.73 m²', from: { 'mL/min/{1.73_m2}': 1 }, possible: [1, 200] },
  hba1c: { name: 'HbA1c', unit: '%', from: { 'mmol/mol': 0.09148 }, possible: [3.5, 18], possibleIn: { 'mmol/mol': [15, 170] } },
  glucose: {
    name: 'glucose',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.0555 },
    possible: [27, 1080],
    possibleIn: { 'mmol/L': [1.5, 60] },
    ask: [
      { units: ['mg/dL'], under: 40, meant: { unit: 'mmol/L' } },
      { units: ['mmol/L'], over: 33, meant: { unit: 'mg/dL' } },
    ],
  },
  hemoglobin: { name: 'hemoglobin', unit: 'g/dL', from: { 'g/L': 0.1 }, possible: [4, 20] },
  ferritin: { name: 'ferritin', unit: 'ng/mL', from: { 'ug/L': 1 }, possible: [1, 5000] },
  transferrinSaturation: { name: 'transferrin saturation', unit: '%', from: {}, possible: [1, 100] },
  magnesium: {
    name: 'magnesium',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.4114 },
    possible: [0.5, 7.3],
    possibleIn: { 'mmol/L': [0.2, 3] },
    ask: [{ units: ['mg/dL'], from: 0.6, to: 1.1, meant: { unit: 'mmol/L' } }],
  },
  cReactiveProtein: { name: 'C-reactive protein', unit: 'mg/L', from: { 'mg/dL': 10 }, possible: [0, 600] },
  urate: { name: 'urate', unit: 'mg/dL', from: { 'umol/L': 1 / 59.48 }, possible: [0.5, 25] },
  vitaminD25: { name: '25-OH vitamin D', unit: 'ng/mL', from: { 'nmol/L': 1 / 2.496 }, possible: [1, 300] },
  /** For trends alone: its category is told by the unit it came in (`albuminuriaCategory`), never converted first. */
  urineAcr: {
    name: 'urine albumin to creatinine',
    unit: 'mg/g',
    from: { 'mg/mmol': 1 / 0.113 },
    possible: [0, 20_000],
    possibleIn: { 'mg/mmol': [0, 2300] },
    ask: [{ units: ['mg/mmol'], over: 800, meant: { unit: 'mg/g' } }],
  },
  urineSodium: { name: 'urine sodium of 24 h', unit: 'mmol/(24.h)', from: {}, possible: [0, 800] },
  urinePotassium: { name: 'urine potassium of 24 h', unit: 'mmol/(24.h)', from: {}, possible: [0, 400] },
  urineUreaNitrogen: { name: 'urine urea nitrogen of 24 h', unit: 'g/(24.h)', from: {}, possible: [0, 60] },
  spKtV: {
    name: 'spKt/V',
    unit: '{ratio}',
    from: {},
    possible: [0.3, 3.5],
    // Peritoneal dialysis has no sessions.
    ask: [{ units: ['{ratio}'], from: 0.5, to: 5, meant: { analyte: 'Kt/V of a week' }, settings: ['peritoneal-dialysis'] }],
  },
  weeklyKtV: {
    name: 'Kt/V of a week',
    unit: '{ratio}',
    from: {},
    possible: [0.5, 5],
    // A week of three sessions comes to about 2 and more; under 1.6 looks like one session (own decision).
    ask: [{ units: ['{ratio}'], from: 0.3, under: 1.6, meant: { analyte: 'Kt/V of one session' }, settings: ['hemodialysis'] }],
  },
  ureaReduction: { name: 'urea reduction ratio', unit: '%', from: {}, possible: [5, 98] },
  proteinCatabolicRate: { name: 'nPCR', unit: 'g/kg/d', from: {}, possible: [0.1, 4] },
} as const satisfies Record<string, AnalyteFacts>;

export type Analyte = keyof typeof analytes;

export const analyteKeys = Object.keys(analytes) as readonly Analyte[];

export function analyteFacts(analyte: Analyte): AnalyteFacts {
  return analytes[analyte];
}
