import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { addDays, type Day } from '#core/quantity/calendarDay.ts';

/**
 * Five invented clients, one per setting and one with diabetes, as of `today`: their dates lie as many days back whenever
 * the demo is loaded, so that results are neither from the future nor years old.
 */
export function demoClients(today: Day): readonly Omit<ClientRecord, 'version'>[] {
  const ago = (days: number): Day => addDays(today, -days);
  const lab = (analyte: Analyte, value: number, unit: string, days: number, more: Partial<LabResult> = {}): LabResult => ({
    analyte,
    value,
    unit,
    takenOn: ago(days),
    ...more,
  });
  const assessed = (days: number, more: Partial<Assessment>): Assessment => ({
    on: ago(days),
    sex: 'female',
    age: { years: 64 },
    treatment: { setting: 'ckd-not-on-dialysis' },
    diabetes: false,
    weighings: [],
    labs: [],
    conditions: [],
    medicines: [],
    supplements: [],
    symptoms: [],
    allergies: [],
    avoidedFoods: [],
    goals: [],
    ...more,
  });
  const client = (id: string, name: string, ...assessments: readonly Assessment[]): Omit<ClientRecord, 'version'> => ({
    id,
    name,
    isDemo: true,
    assessments: assessments.map((assessment, at) => ({ id: `${id.slice(0, -1)}${at}`, assessment })),
    prescriptions: [],
    contacts: [],
  });
  return [
    client(
      '00000000-0000-4000-8000-00000000d010',
      'M. T. (demo)',
      assessed(3, {
        age: { years: 67 },
        stage: { value: 'G3b', on: ago(200) },
        height: { feet: 5, inches: 4 },
        weighings: [
          { weight: { value: 154, unit: 'lb' }, kind: 'actual', on: ago(3) },
          { weight: { value: 156, unit: 'lb' }, kind: 'actual', on: ago(190) },
        ],
        labs: [
          lab('egfr', 38, 'mL/min/1.73 m²', 9),
          lab('potassium', 4.6, 'mmol/L', 9),
          lab('phosphate', 3.6, 'mg/dL', 9),
          lab('bicarbonate', 24, 'mmol/L', 9),
          lab('albumin', 4.1, 'g/dL', 9),
        ],
        conditions: ['hypertension'],
        medicines: ['raas-inhibitor'],
        appetite: 'good',
        goals: ['keep eating with the family'],
        avoidedFoods: ['garlic'],
      }),
      assessed(190, {
        age: { years: 67 },
        stage: { value: 'G3b', on: ago(200) },
        height: { feet: 5, inches: 4 },
        weighings: [{ weight: { value: 156, unit: 'lb' }, kind: 'actual', on: ago(190) }],
        labs: [lab('egfr', 41, 'mL/min/1.73 m²', 192), lab('potassium', 4.4, 'mmol/L', 192), lab('bicarbonate', 25, 'mmol/L', 192)],
        conditions: ['hypertension'],
        medicines: ['raas-inhibitor'],
        appetite: 'good',
      }),
    ),
    client(
      '00000000-0000-4000-8000-00000000d020',
      'R. A. (demo)',
      assessed(2, {
        sex: 'male',
        age: { years: 58 },
        treatment: { setting: 'ckd-not-on-dialysis' },
        diabetes: true,
        stage: { value: 'G4', on: ago(150) },
        height: { value: 178, unit: 'cm' },
        weighings: [{ weight: { value: 102, unit: 'kg' }, kind: 'actual', on: ago(2) }],
        labs: [
          lab('egfr', 24, 'mL/min/1.73 m²', 12),
          lab('potassium', 5.7, 'mmol/L', 12),
          lab('phosphate', 4.4, 'mg/dL', 12),
          lab('bicarbonate', 20, 'mmol/L', 12),
          lab('hba1c', 7.8, '%', 40),
          lab('albumin', 3.9, 'g/dL', 12),
        ],
        medicines: ['raas-inhibitor', 'insulin-or-sulfonylurea'],
        supplements: ['salt-substitute'],
        appetite: 'good',
      }),
    ),
    client(
      '00000000-0000-4000-8000-00000000d030',
      'L. O. (demo)',
      assessed(1, {
        sex: 'male',
        age: { years: 71 },
        treatment: { setting: 'hemodialysis', place: 'in-center', startedOn: ago(700), sessionsPerWeek: 3, sessionHours: 4 },
        height: { value: 172, unit: 'cm' },
        weighings: [
          { weight: { value: 74, unit: 'kg' }, kind: 'dry', on: ago(10) },
          { weight: { value: 77.4, unit: 'kg' }, kind: 'before-dialysis', on: ago(1) },
        ],
        urineMlPerDay: { value: 200, on: ago(20) },
        labs: [
          lab('potassium', 6.7, 'mmol/L', 1, { upperNormal: 5 }),
          lab('phosphate', 6.9, 'mg/dL', 8),
          lab('calcium', 9.1, 'mg/dL', 8),
          lab('pth', 420, 'pg/mL', 60),
          lab('albumin', 3.8, 'g/dL', 8),
          lab('spKtV', 1.42, '{ratio}', 8),
        ],
        medicines: ['phosphate-binder'],
        appetite: 'fair',
      }),
    ),
    client(
      '00000000-0000-4000-8000-00000000d040',
      'E. P. (demo)',
      assessed(5, {
        age: { years: 49 },
        treatment: { setting: 'peritoneal-dialysis', method: 'capd', startedOn: ago(400) },
        height: { value: 163, unit: 'cm' },
        weighings: [{ weight: { value: 66, unit: 'kg' }, kind: 'dry', on: ago(5) }],
        urineMlPerDay: { value: 700, on: ago(30) },
        labs: [
          lab('potassium', 3.6, 'mmol/L', 14),
          lab('phosphate', 5.2, 'mg/dL', 14),
          lab('albumin', 3.2, 'g/dL', 14),
          lab('cholesterol', 92, 'mg/dL', 60),
        ],
        weightLoss: { percent3Months: 6 },
        intake: { proteinG: 46, energyKcal: 1500 },
        appetite: 'poor',
        symptoms: ['constipation'],
      }),
    ),
    client(
      '00000000-0000-4000-8000-00000000d050',
      'J. K. (demo)',
      assessed(4, {
        age: { years: 41 },
        treatment: { setting: 'transplant', transplantedOn: ago(240) },
        stage: { value: 'G3a', on: ago(100) },
        height: { value: 170, unit: 'cm' },
        weighings: [{ weight: { value: 71, unit: 'kg' }, kind: 'actual', on: ago(4) }],
        labs: [
          lab('egfr', 52, 'mL/min/1.73 m²', 6),
          lab('potassium', 4.9, 'mmol/L', 6),
          lab('phosphate', 2.6, 'mg/dL', 6),
          lab('magnesium', 1.6, 'mg/dL', 6),
          lab('albumin', 4.2, 'g/dL', 6),
        ],
        medicines: ['tacrolimus', 'other-immunosuppressant'],
        appetite: 'good',
      }),
    ),
  ];
}
