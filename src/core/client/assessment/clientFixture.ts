import type { Analyte } from '#core/client/labs/analytes.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { Assessment, LabResult, Weighing, WeightKind } from './assessment.ts';

/** Invented clients for tests. */
export const today: Day = '2026-06-15';

export function clientWith(more: Partial<Assessment> = {}): Assessment {
  return {
    on: today,
    sex: 'female',
    age: { years: 64 },
    treatment: { setting: 'ckd-not-on-dialysis' },
    diabetes: false,
    height: { value: 165, unit: 'cm' },
    weighings: [weighing('actual', 70)],
    labs: [],
    conditions: [],
    medicines: [],
    supplements: [],
    symptoms: [],
    allergies: [],
    avoidedFoods: [],
    goals: [],
    ...more,
  };
}

export function weighing(kind: WeightKind, kg: number, on: Day = '2026-06-10'): Weighing {
  return { weight: { value: kg, unit: 'kg' }, kind, on };
}

export function lab(analyte: Analyte, value: number, unit: string, takenOn: Day = '2026-06-05', more: Partial<LabResult> = {}): LabResult {
  return { analyte, value, unit, takenOn, ...more };
}
