import { describe, expect, test } from 'vitest';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { usualCareRules } from '#core/client/rules/careRules.ts';
import { describeResults, describeWeights } from './describeResults.ts';

const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;

function record(...assessments: readonly ReturnType<typeof clientWith>[]): ClientRecord {
  return {
    id: '7c1f0c2e-0f3b-4a55-9d0e-6d1b8a2f4e10',
    version: 1,
    name: 'A.B.',
    isDemo: false,
    assessments: assessments.map((assessment, at) => ({ id: String(at), assessment })),
    prescriptions: [],
    contacts: [],
  };
}
const resultsOf = (one: ClientRecord) => describeResults(one, today, usualCareRules);

describe('results on the page of a client', () => {
  test('[CLT-73] as entered, with the other unit, the age and whether it is out of its band', () => {
    // 2.1 mmol/L of phosphate are 6.5 mg/dL (facts sheet 4.1: 1 mg/dL is 0.3229 mmol/L); the first band is 2.5 to 4.5 mg/dL.
    const [potassium, phosphate] = resultsOf(
      record(
        clientWith({
          ...hemodialysis,
          labs: [lab('phosphate', 2.1, 'mmol/L', '2026-06-05'), lab('potassium', 4.5, 'mEq/L', '2026-06-15')],
        }),
      ),
    );
    expect(phosphate).toMatchObject({
      heading: 'Phosphorus',
      shown: '2.1 mmol/L',
      other: '6.504 mg/dL',
      age: 10,
      isTooOld: false,
      out: 'above',
    });
    // mEq/L and mmol/L are one figure for potassium: the other unit says nothing new. The band is 4.6 to 5.3.
    expect(potassium).toMatchObject({ shown: '4.5 mEq/L', age: 0, out: 'below', points: [{ on: '2026-06-15', value: 4.5 }] });
    expect(potassium).not.toHaveProperty('other');
  });

  test('[CLT-73] of one day without hours the highest stands, the others beside it; after dialysis stands behind before', () => {
    const of = (...labs: ReturnType<typeof lab>[]) => resultsOf(record(clientWith({ ...hemodialysis, labs })))[0];
    const day = '2026-06-10';
    expect(of(lab('potassium', 6.4, 'mmol/L', day), lab('potassium', 5, 'mmol/L', day))).toMatchObject({
      shown: '6.4 mmol/L',
      out: 'above',
      marks: ['also 5 mmol/L that day'],
    });
    const [early, late] = [
      lab('potassium', 6.4, 'mmol/L', day, { takenAt: '07:00' }),
      lab('potassium', 5, 'mmol/L', day, { takenAt: '12:00' }),
    ];
    expect(of(early, late)).toMatchObject({ shown: '5 mmol/L', marks: ['also 6.4 mmol/L that day'] });
    const [before, after] = [
      lab('potassium', 5.9, 'mmol/L', day, { drawn: 'before-dialysis' }),
      lab('potassium', 3.5, 'mmol/L', day, { drawn: 'after-dialysis' }),
    ];
    expect(of(before, after)).toMatchObject({ shown: '5.9 mmol/L', out: 'above' });
  });

  test('[CLT-73] after dialysis it is neither in nor out; a hemolyzed one is marked; an old one says that it no longer counts', () => {
    const of = (more: object, on = '2026-06-10') =>
      resultsOf(record(clientWith({ ...hemodialysis, labs: [lab('potassium', 3.4, 'mmol/L', on, more)] })))[0];
    expect(of({ drawn: 'after-dialysis' })).not.toHaveProperty('out');
    expect(of({ drawn: 'after-dialysis' })?.marks).toEqual(['after dialysis']);
    expect(of({ hemolyzed: true })?.marks).toEqual(['hemolyzed']);
    // On hemodialysis a potassium counts for 45 days (care rules 1): April 30 is 46 days ago, May 1 is 45.
    expect(of({}, '2026-04-30')?.isTooOld).toBe(true);
    expect(of({}, '2026-05-01')?.isTooOld).toBe(false);
  });

  test('[CLT-73] where no source names a band the laboratory’s own limits tell; without either nothing is out', () => {
    const of = (more: object) => resultsOf(record(clientWith({ labs: [lab('potassium', 5.4, 'mmol/L', '2026-06-10', more)] })))[0];
    expect(of({ upperNormal: 5.1 })).toMatchObject({ out: 'above', bands: [] });
    expect(of({ lowerNormal: 3.5, upperNormal: 5.5 })).not.toHaveProperty('out');
    expect(of({})).not.toHaveProperty('out');
  });

  test('[CLT-74] what was corrected is no point of a trend', () => {
    const wrong = clientWith({ labs: [lab('potassium', 7.1, 'mmol/L', '2026-06-10')] });
    const right = clientWith({ labs: [lab('potassium', 4.1, 'mmol/L', '2026-06-10')] });
    const [now, before] = record(right, wrong).assessments;
    const corrected = { ...record(right, wrong), assessments: [{ ...now!, corrects: before!.id }, before!] };
    expect(resultsOf(record(right, wrong))[0]?.points).toHaveLength(2);
    expect(describeWeights(corrected, today)[0]?.points).toHaveLength(1);
    expect(resultsOf(corrected)[0]?.points).toEqual([{ on: '2026-06-10', value: 4.1 }]);
  });

  test('[CLT-73] weights by their kind, as typed, one a day', () => {
    const newest = clientWith({
      weighings: [weighing('dry', 72, '2026-06-10'), { weight: { value: 160, unit: 'lb' }, kind: 'actual', on: '2026-06-12' }],
    });
    const earlier = clientWith({ weighings: [weighing('dry', 73, '2026-03-01'), weighing('dry', 72, '2026-06-10')] });
    expect(describeWeights(record(newest, earlier), today)).toMatchObject([
      { kind: 'actual', heading: 'Weight, actual', shown: '160 lb (72.6 kg)', age: 3 },
      { kind: 'dry', shown: '72 kg', points: [{ value: 73 }, { value: 72 }] },
    ]);
  });

  test('two years of monthly results are told in one pass', () => {
    const months = Array.from(
      { length: 24 },
      (_, at) => `${2024 + Math.floor((at + 6) / 12)}-${String(((at + 6) % 12) + 1).padStart(2, '0')}-05`,
    );
    const assessments = months
      .toReversed()
      .map(on => clientWith({ ...hemodialysis, on, labs: [lab('potassium', 5, 'mmol/L', on), lab('phosphate', 5, 'mg/dL', on)] }));
    expect(resultsOf(record(...assessments)).map(({ points }) => points.length)).toEqual([24, 24]);
  });
});
