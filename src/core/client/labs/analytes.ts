import type { AnalyteFacts } from './analyteFacts.ts';

export type { AnalyteFacts } from './analyteFacts.ts';

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

/**
 * Every laboratory result the workbench reads: one entry is all that a new one needs, but for a rule where it turns a target. Possible figures
 * and mix-ups of the analytes that care rules 5 lists are its own; the others are wider (own decision).
 */
export const analytes = {
  potassium: {
    name: 'potassium',
    unit: 'mmol/L',
    from: mEq,
    possible: [1.5, 9.5],
    ask: [{ units: perLiter, from: 35, to: 60, meant: 'decimal point' }],
    loinc: [
      { code: '2823-3', units: perLiter },
      { code: '6298-4', units: perLiter, readOnly: true },
    ],
  },
  sodium: { name: 'sodium', unit: 'mmol/L', from: mEq, possible: [100, 180], loinc: [{ code: '2951-2', units: perLiter }] },
  chloride: { name: 'chloride', unit: 'mmol/L', from: mEq, possible: [50, 170], loinc: [{ code: '2075-0', units: perLiter }] },
  bicarbonate: {
    name: 'bicarbonate',
    unit: 'mmol/L',
    from: mEq,
    possible: [5, 45],
    loinc: [
      { code: '1963-8', units: perLiter },
      { code: '2028-9', units: perLiter, readOnly: true },
    ],
  },
  phosphate: {
    name: 'phosphate',
    heading: 'Phosphorus',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.3229 },
    possible: [0.6, 15],
    possibleIn: { 'mmol/L': [0.2, 4] },
    ask: [
      { units: ['mmol/L'], over: 2.5, meant: { unit: 'mg/dL' } },
      { units: ['mg/dL'], under: 2, meant: { unit: 'mmol/L' } },
    ],
    loinc: [
      { code: '2777-1', units: ['mg/dL'] },
      { code: '14879-1', units: ['mmol/L'] },
    ],
  },
  calcium: {
    name: 'calcium, total',
    ...totalCalcium,
    loinc: [
      { code: '17861-6', units: ['mg/dL'] },
      { code: '2000-8', units: ['mmol/L'] },
    ],
  },
  correctedCalcium: {
    name: 'calcium, corrected',
    ...totalCalcium,
    loinc: [
      { code: '46099-8', units: ['mg/dL'] },
      { code: '29265-6', units: ['mmol/L'] },
    ],
  },
  ionizedCalcium: {
    name: 'calcium, ionized',
    unit: 'mmol/L',
    from: {},
    possible: [0.4, 2.5],
    loinc: [{ code: '1994-3', units: ['mmol/L'] }],
  },
  pth: {
    name: 'PTH, intact',
    unit: 'pg/mL',
    from: { 'ng/L': 1, 'pmol/L': 1 / 0.106 },
    possible: [1, 3500],
    possibleIn: { 'pmol/L': [0.1, 370] },
    // Everybody who is kept here has kidney disease.
    ask: [{ units: ['pg/mL', 'ng/L'], under: 10, meant: { unit: 'pmol/L' } }],
    loinc: [
      { code: '2731-8', units: ['pg/mL', 'ng/L'] },
      { code: '14866-8', units: ['pmol/L'] },
    ],
  },
  albumin: { name: 'albumin', unit: 'g/dL', from: { 'g/L': 0.1 }, possible: [1, 6], loinc: [{ code: '1751-7', units: ['g/dL', 'g/L'] }] },
  prealbumin: {
    name: 'prealbumin',
    unit: 'mg/dL',
    from: { 'mg/L': 0.1 },
    possible: [1, 80],
    loinc: [{ code: '14338-8', units: ['mg/dL', 'mg/L'], fromMemory: true }],
  },
  cholesterol: {
    name: 'cholesterol, total',
    unit: 'mg/dL',
    from: { 'mmol/L': 38.67 },
    possible: [30, 1000],
    loinc: [
      { code: '2093-3', units: ['mg/dL'] },
      { code: '14647-2', units: ['mmol/L'] },
    ],
  },
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
    loinc: [
      { code: '3094-0', units: ['mg/dL'] },
      { code: '11065-0', units: ['mg/dL'], drawn: 'before-dialysis', readOnly: true },
      { code: '11064-3', units: ['mg/dL'], drawn: 'after-dialysis', readOnly: true, fromMemory: true },
      { code: '22664-7', units: ['mmol/L'] },
    ],
  },
  creatinine: {
    name: 'creatinine',
    unit: 'mg/dL',
    from: { 'umol/L': 1 / 88.4 },
    possible: [0.2, 28],
    possibleIn: { 'umol/L': [20, 2500] },
    loinc: [
      { code: '2160-0', units: ['mg/dL'] },
      { code: '14682-9', units: ['umol/L'] },
    ],
  },
  egfr: {
    name: 'eGFR',
    unit: 'mL/min/1.73 m²',
    from: { 'mL/min/{1.73_m2}': 1 },
    possible: [1, 200],
    loinc: [{ code: '98979-8', units: ['mL/min/1.73 m²', 'mL/min/{1.73_m2}'] }],
  },
  hba1c: {
    name: 'HbA1c',
    unit: '%',
    from: { 'mmol/mol': 0.09148 },
    possible: [3.5, 18],
    possibleIn: { 'mmol/mol': [15, 170] },
    loinc: [
      { code: '4548-4', units: ['%'] },
      { code: '59261-8', units: ['mmol/mol'] },
    ],
  },
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
    loinc: [
      { code: '2345-7', units: ['mg/dL'] },
      { code: '14749-6', units: ['mmol/L'] },
    ],
  },
  hemoglobin: {
    name: 'hemoglobin',
    unit: 'g/dL',
    from: { 'g/L': 0.1 },
    possible: [4, 20],
    loinc: [{ code: '718-7', units: ['g/dL', 'g/L'] }],
  },
  ferritin: {
    name: 'ferritin',
    unit: 'ng/mL',
    from: { 'ug/L': 1 },
    possible: [1, 5000],
    loinc: [{ code: '2276-4', units: ['ng/mL', 'ug/L'] }],
  },
  transferrinSaturation: {
    name: 'transferrin saturation',
    unit: '%',
    from: {},
    possible: [1, 100],
    loinc: [{ code: '2502-3', units: ['%'] }],
  },
  magnesium: {
    name: 'magnesium',
    unit: 'mg/dL',
    from: { 'mmol/L': 1 / 0.4114 },
    possible: [0.5, 7.3],
    possibleIn: { 'mmol/L': [0.2, 3] },
    ask: [{ units: ['mg/dL'], from: 0.6, to: 1.1, meant: { unit: 'mmol/L' } }],
    loinc: [
      { code: '19123-9', units: ['mg/dL'] },
      { code: '2601-3', units: ['mmol/L'] },
    ],
  },
  cReactiveProtein: {
    name: 'C-reactive protein',
    unit: 'mg/L',
    from: { 'mg/dL': 10 },
    possible: [0, 600],
    loinc: [{ code: '1988-5', units: ['mg/L', 'mg/dL'] }],
  },
  urate: {
    name: 'urate',
    unit: 'mg/dL',
    from: { 'umol/L': 1 / 59.48 },
    possible: [0.5, 25],
    loinc: [
      { code: '3084-1', units: ['mg/dL'] },
      { code: '14933-6', units: ['umol/L'], fromMemory: true },
    ],
  },
  vitaminD25: {
    name: '25-OH vitamin D',
    unit: 'ng/mL',
    from: { 'nmol/L': 1 / 2.496 },
    possible: [1, 300],
    loinc: [{ code: '62292-8', units: ['ng/mL'], fromMemory: true }],
  },
  /** For trends alone: its category is told by the unit it came in (`albuminuriaCategory`), never converted first. */
  urineAcr: {
    name: 'urine albumin to creatinine',
    unit: 'mg/g',
    from: { 'mg/mmol': 1 / 0.113 },
    possible: [0, 20_000],
    possibleIn: { 'mg/mmol': [0, 2300] },
    ask: [{ units: ['mg/mmol'], over: 800, meant: { unit: 'mg/g' } }],
    loinc: [
      { code: '9318-7', units: ['mg/g'] },
      { code: '32294-1', units: ['mg/mmol'] },
    ],
  },
  urineSodium: {
    name: 'urine sodium of 24 h',
    unit: 'mmol/(24.h)',
    from: {},
    possible: [0, 800],
    loinc: [{ code: '2956-1', units: ['mmol/(24.h)'] }],
  },
  urinePotassium: {
    name: 'urine potassium of 24 h',
    unit: 'mmol/(24.h)',
    from: {},
    possible: [0, 400],
    loinc: [{ code: '2829-0', units: ['mmol/(24.h)'] }],
  },
  urineUreaNitrogen: {
    name: 'urine urea nitrogen of 24 h',
    unit: 'g/(24.h)',
    from: {},
    possible: [0, 60],
    loinc: [{ code: '3096-5', units: ['g/(24.h)'] }],
  },
  spKtV: {
    name: 'spKt/V',
    heading: 'spKt/V',
    unit: '{ratio}',
    from: {},
    possible: [0.3, 3.5],
    // Peritoneal dialysis has no sessions.
    ask: [{ units: ['{ratio}'], from: 0.5, to: 5, meant: { analyte: 'Kt/V of a week' }, settings: ['peritoneal-dialysis'] }],
    // Daugirdas second generation is the single-pool formula that this program computes.
    loinc: [{ code: '70965-9', units: ['{ratio}'] }],
  },
  weeklyKtV: {
    name: 'Kt/V of a week',
    unit: '{ratio}',
    from: {},
    possible: [0.5, 5],
    // A week of three sessions comes to about 2 and more; under 1.6 looks like one session (own decision).
    ask: [{ units: ['{ratio}'], from: 0.3, under: 1.6, meant: { analyte: 'Kt/V of one session' }, settings: ['hemodialysis'] }],
    loinc: [{ code: '70960-0', units: ['{ratio}'] }],
  },
  ureaReduction: { name: 'urea reduction ratio', unit: '%', from: {}, possible: [5, 98] },
  proteinCatabolicRate: { name: 'nPCR', unit: 'g/kg/d', from: {}, possible: [0.1, 4] },
} as const satisfies Record<string, AnalyteFacts>;

export type Analyte = keyof typeof analytes;

export const analyteKeys = Object.keys(analytes) as readonly Analyte[];

export function analyteFacts(analyte: Analyte): AnalyteFacts {
  return analytes[analyte];
}
