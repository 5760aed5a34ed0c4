/** Units that the workbench writes otherwise than UCUM does. All others are UCUM codes as they stand. */
const ucumOfUnit: Readonly<Record<string, string>> = {
  'mEq/L': 'meq/L',
  'mL/min/1.73 m²': 'mL/min/{1.73_m2}',
  lb: '[lb_av]',
};

export const ucumSystem = 'http://unitsofmeasure.org';

/** The UCUM code of a unit: `mEq/L` is `meq/L`, `mg/dL` is itself. */
export function ucumFromUnit(unit: string): string {
  return (Object.hasOwn(ucumOfUnit, unit) ? ucumOfUnit[unit] : undefined) ?? unit;
}
