import { describe, expect, it } from 'vitest';
import { assessmentFromJson } from '#core/client/assessment/assessmentFromJson.ts';
import { assessmentFields, withCarried } from './assessmentFields.ts';
import { formulaCatalog } from './formulaCatalog.ts';

const whole = {
  on: '2026-06-15',
  sex: 'female',
  age: { years: 64 },
  treatment: { setting: 'hemodialysis', place: 'in-center' },
  diabetes: false,
  weighings: [],
  labs: [{ analyte: 'phosphate', value: 6.8, unit: 'mg/dL', takenOn: '2026-06-08' }],
  weightLoss: { percent6Months: 12, cause: 'unintended' },
  conditions: [],
  medicines: [],
  supplements: [],
  symptoms: [],
  allergies: [],
  avoidedFoods: [],
  goals: [],
};

describe('a result that goes into an assessment', () => {
  it('[CALC-9] is read by the assessment in each of its fields, and leaves the rest as it was', () => {
    expect(assessmentFromJson(whole).issues).toEqual([]);
    for (const field of assessmentFields) {
      const json = withCarried(whole, { field, value: 1.4 });
      const { labs, ...rest } = json;
      // The day of a laboratory result is the person's to give.
      const dated = Array.isArray(labs) ? labs.map(one => ({ takenOn: '2026-06-10', ...one })) : labs;
      expect([field, assessmentFromJson({ ...rest, labs: dated }).issues]).toEqual([field, []]);
    }
    expect(withCarried(whole, { field: 'weightLoss.percent3Months', value: 10 }).weightLoss).toEqual({
      percent3Months: 10,
      percent6Months: 12,
      cause: 'unintended',
    });
    expect(withCarried(undefined, { field: 'intake.proteinG', value: 63.6 })).toEqual({ intake: { proteinG: 63.6 } });
  });

  it('[CALC-9] is offered of a figure alone, and never as an eGFR, a corrected calcium or a weight', () => {
    const offered = formulaCatalog.filter(({ fills }) => fills.length > 0);
    expect(offered.map(({ name }) => name).sort()).toEqual([
      'kt-v-single-pool',
      'npcr-before-session',
      'npcr-between-sessions',
      'protein-equivalent-peritoneal',
      'protein-intake-from-urea-generation',
      'protein-intake-from-urine',
      'urea-reduction-ratio',
      'weight-loss-percent',
    ]);
    for (const { fills, example } of offered) for (const { result } of fills) expect(typeof example.results[result]).toBe('number');
  });
});
