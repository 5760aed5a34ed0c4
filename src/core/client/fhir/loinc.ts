import type { Analyte } from '#core/client/labs/analytes.ts';

/**
 * One LOINC code of an analyte. LOINC: free licence, © Regenstrief Institute, the notice stands in `loincNotice`.
 * Codes are those of the clinical facts sheet, section 4.1, which were seen with this meaning in public mappings; cholesterol in HL7's
 * example value set of FHIR. `fromMemory` marks the others: check them against the LOINC release before they are relied on.
 */
export interface LoincCode {
  readonly code: string;
  readonly analyte: Analyte;
  /** The units, as the workbench writes them, that this code stands for: a mass code refuses moles. First the one it is written with. */
  readonly units: readonly string[];
  readonly fromMemory?: true;
  /** The code itself says that the sample was drawn before or after dialysis. */
  readonly drawn?: 'before-dialysis' | 'after-dialysis';
  /** Read and never written: another code of the analyte is the usual one. */
  readonly readOnly?: true;
}

export const loincNotice =
  'This material contains content from LOINC (http://loinc.org). LOINC is copyright © Regenstrief Institute, Inc. and the Logical Observation Identifiers Names and Codes (LOINC) Committee and is available at no cost under the license at http://loinc.org/license.';

const perLiter = ['mmol/L', 'mEq/L'];

export const loincCodes: readonly LoincCode[] = [
  { code: '2823-3', analyte: 'potassium', units: perLiter },
  { code: '6298-4', analyte: 'potassium', units: perLiter, readOnly: true },
  { code: '2951-2', analyte: 'sodium', units: perLiter },
  { code: '2075-0', analyte: 'chloride', units: perLiter },
  { code: '1963-8', analyte: 'bicarbonate', units: perLiter },
  { code: '2028-9', analyte: 'bicarbonate', units: perLiter, readOnly: true },
  { code: '2777-1', analyte: 'phosphate', units: ['mg/dL'] },
  { code: '14879-1', analyte: 'phosphate', units: ['mmol/L'] },
  { code: '17861-6', analyte: 'calcium', units: ['mg/dL'] },
  { code: '2000-8', analyte: 'calcium', units: ['mmol/L'] },
  { code: '46099-8', analyte: 'correctedCalcium', units: ['mg/dL'] },
  { code: '29265-6', analyte: 'correctedCalcium', units: ['mmol/L'] },
  { code: '1994-3', analyte: 'ionizedCalcium', units: ['mmol/L'] },
  { code: '2731-8', analyte: 'pth', units: ['pg/mL', 'ng/L'] },
  { code: '14866-8', analyte: 'pth', units: ['pmol/L'] },
  { code: '1751-7', analyte: 'albumin', units: ['g/dL', 'g/L'] },
  { code: '14338-8', analyte: 'prealbumin', units: ['mg/dL', 'mg/L'], fromMemory: true },
  { code: '2093-3', analyte: 'cholesterol', units: ['mg/dL'] },
  { code: '14647-2', analyte: 'cholesterol', units: ['mmol/L'] },
  { code: '3094-0', analyte: 'ureaNitrogen', units: ['mg/dL'] },
  { code: '11065-0', analyte: 'ureaNitrogen', units: ['mg/dL'], drawn: 'before-dialysis', readOnly: true },
  { code: '11064-3', analyte: 'ureaNitrogen', units: ['mg/dL'], drawn: 'after-dialysis', readOnly: true, fromMemory: true },
  { code: '22664-7', analyte: 'ureaNitrogen', units: ['mmol/L'] },
  { code: '2160-0', analyte: 'creatinine', units: ['mg/dL'] },
  { code: '14682-9', analyte: 'creatinine', units: ['umol/L'] },
  { code: '98979-8', analyte: 'egfr', units: ['mL/min/1.73 m²', 'mL/min/{1.73_m2}'] },
  { code: '4548-4', analyte: 'hba1c', units: ['%'] },
  { code: '59261-8', analyte: 'hba1c', units: ['mmol/mol'] },
  { code: '2345-7', analyte: 'glucose', units: ['mg/dL'] },
  { code: '14749-6', analyte: 'glucose', units: ['mmol/L'] },
  { code: '718-7', analyte: 'hemoglobin', units: ['g/dL', 'g/L'] },
  { code: '2276-4', analyte: 'ferritin', units: ['ng/mL', 'ug/L'] },
  { code: '2502-3', analyte: 'transferrinSaturation', units: ['%'] },
  { code: '19123-9', analyte: 'magnesium', units: ['mg/dL'] },
  { code: '2601-3', analyte: 'magnesium', units: ['mmol/L'] },
  { code: '1988-5', analyte: 'cReactiveProtein', units: ['mg/L', 'mg/dL'] },
  { code: '3084-1', analyte: 'urate', units: ['mg/dL'] },
  { code: '14933-6', analyte: 'urate', units: ['umol/L'], fromMemory: true },
  { code: '62292-8', analyte: 'vitaminD25', units: ['ng/mL'], fromMemory: true },
  { code: '9318-7', analyte: 'urineAcr', units: ['mg/g'] },
  { code: '32294-1', analyte: 'urineAcr', units: ['mg/mmol'] },
  { code: '2956-1', analyte: 'urineSodium', units: ['mmol/(24.h)'] },
  { code: '2829-0', analyte: 'urinePotassium', units: ['mmol/(24.h)'] },
  { code: '3096-5', analyte: 'urineUreaNitrogen', units: ['g/(24.h)'] },
  // Daugirdas second generation is the single-pool formula that this program computes.
  { code: '70965-9', analyte: 'spKtV', units: ['{ratio}'] },
  { code: '70960-0', analyte: 'weeklyKtV', units: ['{ratio}'] },
];

/** Body weight as measured. Dry, goal and standard weight are none, and have no LOINC code. */
export const bodyWeightLoinc = '29463-7';

export function loincCode(code: string): LoincCode | undefined {
  return loincCodes.find(one => one.code === code);
}

/** The code that a result in this unit is written with; undefined where none is known (URR, nPCR, 25-OH vitamin D in nmol/L). */
export function loincFor(analyte: Analyte, unit: string): LoincCode | undefined {
  return loincCodes.find(one => one.analyte === analyte && one.readOnly !== true && one.units.includes(unit));
}
