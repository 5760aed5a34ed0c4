// This material contains content from LOINC (http://loinc.org). LOINC is copyright © Regenstrief Institute, Inc. and the Logical Observation
// Identifiers Names and Codes (LOINC) Committee and is available at no cost under the license at http://loinc.org/license.
import type { LoincEntry } from '#core/client/labs/analyteFacts.ts';
import { type Analyte, analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';

/** A LOINC code with the analyte that it stands for. */
export interface LoincCode extends LoincEntry {
  readonly analyte: Analyte;
}

/** The codes that stand beside the analytes. @internal */
export const loincCodes: readonly LoincCode[] = analyteKeys.flatMap(analyte =>
  (analyteFacts(analyte).loinc ?? []).map(entry => ({ analyte, ...entry })),
);

/** Body weight as measured. Dry, goal and standard weight are none, and have no LOINC code. */
export const bodyWeightLoinc = '29463-7';

export function loincCode(code: string): LoincCode | undefined {
  return loincCodes.find(one => one.code === code);
}

/** The code that a result in this unit is written with; undefined where none is known (URR, nPCR, 25-OH vitamin D in nmol/L). */
export function loincFor(analyte: Analyte, unit: string): LoincCode | undefined {
  return loincCodes.find(one => one.analyte === analyte && one.readOnly !== true && one.units.includes(unit));
}
