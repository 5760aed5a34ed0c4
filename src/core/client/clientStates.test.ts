import { describe, expect, it } from 'vitest';
import { checkAssessment } from './checkAssessment.ts';
import type { Assessment } from './client.ts';
import { stageOf } from './clientFacts.ts';
import { clientWith, lab, today, weighing } from './clientFixture.ts';
import { phosphateState } from './phosphateState.ts';
import { potassiumState } from './potassiumState.ts';
import { bmiOf, weightBasis } from './weightBasis.ts';

const facts = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const inCenter = { setting: 'hemodialysis', place: 'in-center' } as const;
const egfr = (value: number, on: string) => lab('egfr', value, 'mL/min/{1.73_m2}', on);

describe('stage (KDIGO CKD 2024, as quoted)', () => {
  it('[CLT-9] one result never makes a stage; two at least 90 days apart propose the milder of the two', () => {
    expect(stageOf(facts({ labs: [egfr(28, '2026-06-01')] }))).toBeUndefined();
    expect(stageOf(facts({ labs: [egfr(28, '2026-06-01'), egfr(32, '2026-03-04')] }))).toBeUndefined();
    expect(stageOf(facts({ labs: [egfr(28, '2026-06-01'), egfr(32, '2026-03-03')] }))).toBe('G3b');
  });

  it('[CLT-9] the stage that the team has set stands; creatinine alone makes none', () => {
    expect(stageOf(facts({ stage: { value: 'G4', on: '2026-01-01' }, labs: [egfr(50, '2026-06-01'), egfr(50, '2026-01-01')] }))).toBe('G4');
    const creatinine = [lab('creatinine', 2.4, 'mg/dL'), lab('creatinine', 2.3, 'mg/dL', '2026-01-01')];
    expect(stageOf(facts({ labs: creatinine }))).toBeUndefined();
  });
});

describe('potassium', () => {
  const stateOf = (...values: [value: number, on: string][]) =>
    potassiumState(facts({ labs: values.map(([value, on]) => lab('potassium', value, 'mmol/L', on)) })).kind;

  it('[CLT-11] high is above range twice running, or once over 5.5 (facts 3.4)', () => {
    expect(stateOf([5.2, '2026-06-01'])).toBe('once-above');
    expect(stateOf([5.2, '2026-06-01'], [5.1, '2026-05-01'])).toBe('high');
    expect(stateOf([5.2, '2026-06-01'], [4.9, '2026-05-10'], [5.3, '2026-05-01'])).toBe('once-above');
    expect(stateOf([5.6, '2026-06-01'])).toBe('high');
    expect(stateOf([4.6, '2026-06-01'], [5.9, '2026-05-01'])).toBe('in-range');
    expect(stateOf([3.4, '2026-06-01'])).toBe('low');
  });

  it('[CLT-11] the laboratory’s own range counts; a hemolyzed sample does not', () => {
    const own = lab('potassium', 5.2, 'mmol/L', '2026-06-01', { upperNormal: 5.3 });
    expect(potassiumState(facts({ labs: [own] })).kind).toBe('in-range');
    expect(potassiumState(facts({ labs: [{ ...own, value: 6, hemolyzed: true }] })).kind).toBe('missing');
  });

  it('[CLT-11] a result older than 90 days, on dialysis 35 days, sets no target', () => {
    const on = (day: string, treatment: Assessment['treatment']) =>
      potassiumState(facts({ treatment, labs: [lab('potassium', 5, 'mmol/L', day)] })).kind;
    const outside = { setting: 'ckd-not-on-dialysis' } as const;
    expect(on('2026-03-17', outside)).toBe('in-range'); // 90 days
    expect(on('2026-03-16', outside)).toBe('missing');
    expect(on('2026-05-11', inCenter)).toBe('in-range'); // 35 days
    expect(on('2026-05-10', inCenter)).toBe('missing');
  });
});

describe('phosphate', () => {
  const at = (value: number, more: Partial<Assessment> = {}, on = '2026-06-01') =>
    phosphateState(facts({ ...more, labs: [lab('phosphate', value, 'mg/dL', on)] })).kind;

  it('[CLT-14] over 4.5 is high; on dialysis 4.5-5.5 is where guidelines differ', () => {
    expect([at(2.4), at(4.5), at(4.6)]).toEqual(['low', 'in-range', 'high']);
    expect([at(4.6, { treatment: inCenter }), at(5.5, { treatment: inCenter }), at(5.6, { treatment: inCenter })]).toEqual([
      'above-normal',
      'above-normal',
      'high',
    ]);
  });

  it('[CLT-14] an old result bounds nothing; without a stage the shortest age holds (KDIGO CKD-MBD 2017 intervals)', () => {
    const stage = (value: 'G3b' | 'G5') => ({ stage: { value, on: '2026-01-01' } });
    expect(at(6, stage('G3b'), '2025-08-01')).toBe('high');
    expect(at(6, stage('G5'), '2026-03-01')).toBe('missing');
    expect(at(6, {}, '2026-03-01')).toBe('missing');
  });
});

describe('weight basis (facts section 2)', () => {
  const basis = (more: Partial<Assessment>) => {
    const found = weightBasis(facts(more));
    return found.kind === 'none' ? found.whatToCheck : `${found.chosen.id} ${found.chosen.kg}${found.uncertain ? ', uncertain' : ''}`;
  };

  it('[CLT-17] dry weight on dialysis, never the weight before a session', () => {
    expect(basis({ treatment: inCenter, weighings: [weighing('before-dialysis', 74), weighing('dry', 70, '2026-05-01')] })).toBe('dry 70');
    expect(basis({ treatment: inCenter, weighings: [weighing('before-dialysis', 74)] })).toMatch(/^Enter the dry weight/);
  });

  it('[CLT-17] edema asks for an estimated dry weight and stays uncertain; hospital takes the usual weight', () => {
    expect(basis({ conditions: ['edema'] })).toMatch(/estimated dry weight/);
    expect(basis({ conditions: ['edema'], weighings: [weighing('estimated-dry', 66)] })).toBe('estimated-dry 66, uncertain');
    expect(basis({ conditions: ['in-hospital'], weighings: [weighing('actual', 80), weighing('usual', 72)] })).toBe('usual 72');
  });

  it('[CLT-17] the newest weight of a kind counts, and a pick of the dietitian', () => {
    expect(basis({ weighings: [weighing('actual', 71, '2026-01-01'), weighing('actual', 69, '2026-06-01')] })).toBe('actual 69');
    const heavy = facts({ weighings: [weighing('actual', 98)], height: { value: 163, unit: 'cm' } });
    expect(weightBasis(heavy, 'actual')).toMatchObject({ needsChoice: false, chosen: { id: 'actual', kg: 98 } });
  });

  it('[CLT-17] after amputation BMI takes the corrected weight, targets the tissue that is there (facts 2, worked)', () => {
    const missing = {
      weighings: [weighing('actual', 70)],
      height: { value: 172, unit: 'cm' as const },
      missingParts: ['lower-leg-with-foot' as const],
    };
    expect(bmiOf(facts(missing))!.toFixed(1)).toBe('25.1');
    expect(basis(missing)).toBe('actual 70');
  });
});
