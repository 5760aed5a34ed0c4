import { describe, expect, it } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { notUsed } from '#core/client/assessment/notUsed.ts';
import { phosphateState } from './phosphateState.ts';
import { potassiumState } from './potassiumState.ts';
import { stageFacts, stageOf } from './stage.ts';
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
    expect(stageOf(facts({ stage: { value: 'G4', on: '2026-06-02' }, labs: [egfr(50, '2026-06-01'), egfr(50, '2026-01-01')] }))).toBe('G4');
    // A newer eGFR that tells another category: the milder restricts, the lower cautions, and it is asked (care rules 1).
    const differing = stageFacts(facts({ stage: { value: 'G4', on: '2026-01-01' }, labs: [egfr(50, '2026-06-01')] }));
    expect(differing).toMatchObject({ restricting: 'G3a', cautioning: 'G4', question: expect.stringContaining('which holds') });
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
    expect(potassiumState(facts({ labs: [{ ...own, value: 6, hemolyzed: true }] })).kind).toBe('unknown');
  });

  it('[CLT-11] after dialysis a potassium is neither in range nor low; one from before a RAAS change is not in range (care rules 1, 2)', () => {
    const after = lab('potassium', 4.2, 'mmol/L', '2026-06-10', { drawn: 'after-dialysis' });
    expect(potassiumState(facts({ treatment: inCenter, labs: [after] })).kind).toBe('unknown');
    expect(potassiumState(facts({ treatment: inCenter, labs: [{ ...after, value: 3.1 }] })).kind).toBe('unknown');
    expect(potassiumState(facts({ treatment: inCenter, labs: [{ ...after, value: 5.7 }] })).kind).toBe('high');
    expect(potassiumState(facts({ raasChangedOn: '2026-06-11', labs: [lab('potassium', 4.2, 'mmol/L')] })).kind).toBe('unknown');
  });

  it('[CLT-11] results of one day that contradict each other set nothing; with hours the later stands', () => {
    const day = (value: number, takenAt?: string) =>
      lab('potassium', value, 'mmol/L', '2026-06-10', takenAt === undefined ? {} : { takenAt });
    expect(potassiumState(facts({ labs: [day(4.6), day(5.8)] })).kind).toBe('unknown');
    expect(potassiumState(facts({ labs: [day(5.8, '08:00'), day(4.6, '12:00')] })).kind).toBe('in-range');
  });

  it('[CLT-11] a result older than 100 days, on hemodialysis 45 days, sets no target (care rules 1)', () => {
    const on = (day: string, treatment: Assessment['treatment']) =>
      potassiumState(facts({ treatment, labs: [lab('potassium', 5, 'mmol/L', day)] })).kind;
    const outside = { setting: 'ckd-not-on-dialysis' } as const;
    expect(on('2026-03-07', outside)).toBe('in-range'); // 100 days
    expect(on('2026-03-06', outside)).toBe('unknown');
    expect(on('2026-05-01', inCenter)).toBe('in-range'); // 45 days
    expect(on('2026-04-30', inCenter)).toBe('unknown');
  });
});

describe('phosphate', () => {
  const at = (value: number, more: Partial<Assessment> = {}, on = '2026-06-01') =>
    phosphateState(facts({ ...more, labs: [lab('phosphate', value, 'mg/dL', on)] })).kind;

  it('[CLT-14] over 4.5 once is above; on dialysis 4.5-5.5 is where guidelines differ', () => {
    expect([at(2.4), at(4.5), at(4.6)]).toEqual(['low', 'in-range', 'once-above']);
    expect([at(4.6, { treatment: inCenter }), at(5.5, { treatment: inCenter }), at(5.6, { treatment: inCenter })]).toEqual([
      'above-normal',
      'above-normal',
      'once-above',
    ]);
  });

  it('[CLT-14] persistent is two days above, or three rising with the last above; the laboratory’s own limit counts (care rules 2)', () => {
    const series = (upperNormal: number | undefined, ...given: readonly [value: number, on: string][]) =>
      phosphateState(
        facts({
          treatment: inCenter,
          labs: given.map(([value, on]) => lab('phosphate', value, 'mg/dL', on, upperNormal === undefined ? {} : { upperNormal })),
        }),
      ).kind;
    expect(series(undefined, [5.9, '2026-06-10'], [5.7, '2026-05-10'])).toBe('persistent');
    expect(series(undefined, [5.9, '2026-06-10'], [5.7, '2026-06-10'])).toBe('once-above');
    expect(series(undefined, [5.9, '2026-06-10'], [5.2, '2026-05-10'])).toBe('once-above');
    expect(series(undefined, [5.9, '2026-06-10'], [5.2, '2026-05-10'], [4.9, '2026-04-10'])).toBe('persistent');
    expect(series(4.5, [5, '2026-06-10'], [4.9, '2026-05-10'])).toBe('persistent');
    expect(series(undefined, [5.9, '2026-06-10'], [5.7, '2026-02-15'])).toBe('persistent'); // 120 days
    expect(series(undefined, [5.9, '2026-06-10'], [5.7, '2026-02-14'])).toBe('once-above');
  });

  it('[CLT-14] an old result bounds nothing; without a stage the shortest age holds (KDIGO CKD-MBD 2017 intervals)', () => {
    const stage = (value: 'G3b' | 'G5') => ({ stage: { value, on: '2026-01-01' } });
    expect(at(6, stage('G3b'), '2025-08-01')).toBe('once-above');
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

describe('ages of facts (care rules 1)', () => {
  it('[CLT-70] a clinic’s own age is used by every rule, and what is too old is shown with why', () => {
    const labs = [lab('potassium', 4.6, 'mmol/L', '2026-05-20'), lab('phosphate', 4, 'mg/dL', '2025-12-01')];
    const client = clientWith({ treatment: inCenter, weighings: [weighing('dry', 70)], labs });
    const shorter = [{ id: 'age.potassium.hemodialysis', value: 20, by: 'A. N.', on: '2026-01-01' }] as const;
    expect(potassiumState(checkAssessment(client, today).facts).kind).toBe('in-range');
    expect(potassiumState(checkAssessment(client, today, shorter).facts).kind).toBe('unknown');
    expect(notUsed(checkAssessment(client, today).facts)).toEqual([
      { what: 'phosphate 4 mg/dL (on 2025-12-01, 196 days old)', why: 'phosphate counts for 60 days' },
    ]);
    expect(notUsed(checkAssessment(client, today, shorter).facts)).toHaveLength(2);
  });

  it('[CLT-70] an assessment past its age proposes nothing and asks for a new one', () => {
    const old = { ...clientWith({ treatment: inCenter, weighings: [weighing('dry', 70)] }), on: '2026-03-01' };
    expect(checkAssessment(old, today).issues.map(({ code }) => code)).toEqual(['assessment-too-old']);
  });
});
