import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { TargetItem } from './target.ts';

const albumin = lab('albumin', 4.2, 'g/dL');
const well: Partial<Assessment> = { muscleLoss: { percent3Months: 0 }, intake: { energyKcal: 2100, proteinG: 80 } };
const hemodialysis: Partial<Assessment> = {
  treatment: { setting: 'hemodialysis', place: 'in-center' },
  weighings: [weighing('dry', 70)],
};
const peritoneal: Partial<Assessment> = {
  treatment: { setting: 'peritoneal-dialysis', method: 'capd' },
  weighings: [weighing('dry', 70)],
};
const transplant = (transplantedOn = '2024-01-01'): Partial<Assessment> => ({ treatment: { setting: 'transplant', transplantedOn } });
const stage = (value: 'G2' | 'G4' | 'G5'): Partial<Assessment> => ({ stage: { value, on: '2026-01-10' } });

function targetOf(item: TargetItem, more: Partial<Assessment>, ...labs: readonly LabResult[]) {
  const proposal = proposePrescription(clientWith({ ...well, ...more, labs: [albumin, ...labs] }), today);
  if (proposal.kind === 'barred') throw new Error(proposal.issues.map(({ told }) => told).join(' '));
  const target = proposal.targets[item];
  return {
    kind: target.kind,
    range: target.kind === 'proposed' ? [target.range.lo, target.range.hi] : undefined,
    words: target.kind === 'withheld' ? target.why : target.reasons.join(' '),
    checks: target.kind === 'withheld' ? target.whatToCheck : [],
    others: target.alternatives.map(({ range }) => (range === undefined ? 'no figure' : `${range.lo}-${range.hi}`)),
  };
}

describe('potassium (facts 3.4)', () => {
  const potassium = (value: number, on = '2026-06-10') => lab('potassium', value, 'mmol/L', on);
  const of = (more: Partial<Assessment>, ...values: readonly number[]) =>
    targetOf('potassium', more, ...values.map(value => potassium(value)));
  const checked = { potassiumSteps: { causesCheckedOn: '2026-06-10' } };
  const cut = { potassiumSteps: { causesCheckedOn: '2026-06-10', additivesCutOn: '2026-06-01' } };

  test.each<[string, Partial<Assessment>, number, string]>([
    ['low', {}, 3.4, 'Low: nothing is limited; look for the cause.'],
    ['low on peritoneal dialysis', peritoneal, 3.4, 'Low: foods with potassium are added.'],
    ['in range', {}, 4.6, 'In range: no limit; fruit and vegetables are encouraged.'],
    ['in range on hemodialysis', hemodialysis, 4, 'In range: no number unless the team sets one.'],
    [
      'under 4.0 on hemodialysis',
      hemodialysis,
      3.9,
      'Under 4.0 before a session is linked to harm (CJASN 2007;2:999): nothing is limited.',
    ],
    ['in range on peritoneal dialysis', peritoneal, 3.9, 'In range: no number unless the team sets one.'],
    ['in range after a transplant', transplant(), 4.6, 'In range: no number unless the team sets one.'],
    ['above once', {}, 5.2, 'Above range once: repeat before anything is limited.'],
  ])('[CLT-11] %s: no limit, and what is told', (_, more, value, words) => {
    const target = of(more, value);
    expect(target.kind).toBe('no-limit');
    expect(target.words).toBe(`potassium ${value} mmol/L (on 2026-06-10, 5 days old). ${words}`);
  });

  test('[CLT-12] high: the causes, then additives, then a later result, and only then a figure', () => {
    expect(of({}, 5.8)).toMatchObject({ kind: 'withheld', words: expect.stringMatching(/The other causes come before food\.$/) });
    expect(of({}, 5.8).checks).toHaveLength(13);
    expect(of(checked, 5.8)).toMatchObject({ kind: 'withheld', checks: ['Mark when these were gone through.'] });
    const waiting = { potassiumSteps: { causesCheckedOn: '2026-06-10', additivesCutOn: '2026-06-11' } };
    expect(of(waiting, 5.8)).toMatchObject({ kind: 'withheld', checks: ['A potassium result from after that day.'] });
    expect(of(cut, 5.8)).toMatchObject({ kind: 'proposed', range: [2000, 3000] });
  });

  test('[CLT-12] while wasting is not ruled out it is held back, with the causes where they were not gone through', () => {
    const poor = 'Dietitian review of intake; loosen limits first.';
    expect(of({ appetite: 'poor' }, 5.8).words).toMatch(/Poor appetite: do not restrict further\.$/);
    expect(of({ appetite: 'poor' }, 5.8).checks).toEqual([poor, ...of({}, 5.8).checks]);
    expect(of({ appetite: 'poor', ...checked }, 5.8).checks).toEqual([poor]);
  });

  test('[CLT-11] no figure is on record for peritoneal dialysis and transplants', () => {
    const asked = ['A figure set by the dietitian with the team.'];
    expect(of({ ...peritoneal, ...cut }, 5.8)).toMatchObject({
      kind: 'withheld',
      words: expect.stringContaining('Individual: no figure is on record.'),
      checks: asked,
      others: [],
    });
    expect(of({ ...transplant(), ...cut }, 5.8)).toMatchObject({
      kind: 'withheld',
      words: expect.stringContaining('Calcineurin inhibitors and trimethoprim'),
      checks: asked,
    });
  });

  // 70 mmol is 2737 mg, 50 mmol 1955 mg (39.10 a mmol, facts 5, F8); 40 mg/kg of 70 kg.
  test('[CLT-11] on hemodialysis 50 to 70 mmol stand beside it over 6 mmol/L, 40 mg/kg where there is a weight', () => {
    expect(of({ ...hemodialysis, ...checked }, 6)).toMatchObject({ range: [0, 2730], others: ['no figure', '2000-4000', '0-2800'] });
    expect(of({ ...hemodialysis, ...checked }, 6.1).others).toEqual(['no figure', '1955-2737', '2000-4000', '0-2800']);
    expect(of({ ...hemodialysis, weighings: [] }, 5.8).others).toEqual(['0-2730', '2000-4000']);
  });

  test('[CLT-11] a RAAS inhibitor on record is told beside a limit', () => {
    const words = 'A RAAS inhibitor raises potassium';
    expect(of({ ...cut, medicines: ['raas-inhibitor'] }, 5.8).words).toContain(words);
    expect(of(cut, 5.8).words).not.toContain(words);
  });

  test('[CLT-12] additives: none while it is high; before the causes were looked at that is told', () => {
    const additives = (more: Partial<Assessment>, value: number) => targetOf('potassiumAdditives', more, potassium(value));
    const words = 'The other causes are looked at beside it; no figure for food before.';
    expect(additives({}, 5.8)).toMatchObject({ range: [0, 0], words: expect.stringContaining(words) });
    expect(additives(checked, 5.8)).toMatchObject({ range: [0, 0], words: expect.not.stringContaining(words) });
    for (const value of [3.4, 4.6, 5.2]) expect(additives({}, value).kind).toBe('no-limit');
    expect(targetOf('potassiumAdditives', {})).toMatchObject({ kind: 'withheld', checks: ['A potassium result.'] });
  });
});

describe('phosphorus (facts 3.5)', () => {
  const phosphate = (value: number, on = '2026-06-10') => lab('phosphate', value, 'mg/dL', on);
  const of = (more: Partial<Assessment>, ...labs: readonly LabResult[]) => targetOf('phosphorus', more, ...labs);
  const twice = [phosphate(6.2), phosphate(6, '2026-05-20')];

  test.each<[string, Partial<Assessment>, number, string, readonly string[]]>([
    ['low', stage('G4'), 2.4, 'Low: nothing is limited; look for poor intake and refeeding.', []],
    ['low, a stable transplant', transplant(), 2.4, 'Low: nothing is limited; look for poor intake and refeeding.', []],
    [
      'low, 4 weeks after a transplant',
      transplant('2026-05-18'),
      2.4,
      'Early after transplant with low phosphate: high-phosphorus food or a supplement.',
      [],
    ],
    [
      'low, 8 weeks after a transplant',
      transplant('2026-04-20'),
      2.4,
      'Early after transplant with low phosphate: high-phosphorus food or a supplement.',
      [],
    ],
    ['normal', stage('G4'), 4, 'Normal: no limit; it is not treated to prevent.', []],
    [
      'where guidelines differ',
      hemodialysis,
      5,
      'Over 4.5, within the older dialysis range of 3.5-5.5 mg/dL: KDIGO 2017 aims toward normal, no figure is proposed.',
      ['no figure', '800-1000'],
    ],
    [
      'above once',
      stage('G4'),
      5,
      'Above range once: additives first; a figure takes serial results (KDIGO CKD-MBD 2017, as quoted).',
      ['no figure'],
    ],
  ])('[CLT-14] %s: no limit, and what is told', (_, more, value, words, others) => {
    expect(of(more, phosphate(value))).toMatchObject({ kind: 'no-limit', words: expect.stringContaining(words), others });
  });

  // Care rules 4; facts 5, F16: 128 + 14 g; 6.2: 10 mg/g. 0.8 g/kg of 70 kg is 56 g: 912 mg. Of 79 kg 63.2 g: 632 to 1013 mg.
  test('[CLT-14] raised twice: 800 to 1000 mg where the protein brings no more, else how far apart they are', () => {
    const fits = of(stage('G4'), ...twice);
    expect(fits).toMatchObject({ kind: 'proposed', range: [800, 1000], others: ['no figure', '0-1000'] });
    expect(fits.words).toMatch(/^phosphate 6\.2 mg\/dL \(on 2026-06-10, 5 days old\); phosphate 6 mg\/dL \(.*\): persistently raised\./);
    const more = of({ ...stage('G4'), weighings: [weighing('actual', 79)] }, ...twice);
    expect(more).toMatchObject({ kind: 'withheld', checks: ['A figure set by the dietitian, with protein kept.'] });
    expect(more.words).toContain('Up to 1000 mg against about 632 to 1013 mg that the protein target brings: as much as 13 mg apart.');
  });

  test('[CLT-14] a protein target without an upper end brings what its least brings', () => {
    // Acute illness: at least 1.0 g/kg of 70 kg; 700 to 1108 mg.
    expect(of({ ...stage('G4'), conditions: ['acute-illness'] }, ...twice).words).toContain('700 to 1108 mg');
  });

  test('[CLT-14] raised twice, and held back: wasting, a transplant, protein that is not known', () => {
    expect(of({ ...stage('G4'), appetite: 'poor' }, ...twice)).toMatchObject({
      kind: 'withheld',
      words: expect.stringContaining('Poor appetite: do not restrict further.'),
      checks: ['Dietitian review of intake; loosen limits first.'],
    });
    expect(of(transplant(), ...twice)).toMatchObject({
      kind: 'withheld',
      words: expect.stringContaining('No figure for transplants is on record.'),
      checks: ['A figure set by the dietitian with the team.'],
    });
    expect(of({}, ...twice)).toMatchObject({
      kind: 'withheld',
      words: expect.stringContaining('What the protein brings is not known'),
      checks: ['The protein target.'],
    });
    expect(of({ ...stage('G4'), medicines: ['phosphate-binder'] }, ...twice).words).toContain('On record: phosphate binder.');
  });

  test('[CLT-14] additives: none from the first result above normal on', () => {
    const kindOf = (more: Partial<Assessment>, value: number) => targetOf('phosphateAdditives', more, phosphate(value)).kind;
    expect([2.4, 4, 4.6].map(value => kindOf(stage('G4'), value))).toEqual(['no-limit', 'no-limit', 'proposed']);
    expect(kindOf(hemodialysis, 5)).toBe('proposed');
    expect(targetOf('phosphateAdditives', {})).toMatchObject({ kind: 'withheld', checks: ['A phosphate result.'] });
  });
});

test('[CLT-10] calcium: what to find out where there is no stage, nothing where it is not 3 or 4 (facts 3.5)', () => {
  const asked = ['The stage set by the kidney team, or two eGFRs at least 90 days apart.'];
  expect(targetOf('calcium', {})).toMatchObject({ kind: 'withheld', checks: asked });
  for (const value of ['G2', 'G5'] as const) expect(targetOf('calcium', stage(value))).toMatchObject({ kind: 'withheld', checks: [] });
  // Facts 3.9, read in study notes.
  const stones = proposePrescription(clientWith({ conditions: ['calcium-oxalate-stones'] }), today);
  if (stones.kind === 'barred') throw new Error('barred');
  expect(stones.targets.calcium.alternatives).toMatchObject([
    { range: { lo: 1000, hi: 1200 }, sources: [{ text: 'AUA 2014', secondHand: true }] },
  ]);
});

test('[CLT-12] two potassium results of one day that contradict each other set no figure, and the highest still speaks against additives', () => {
  const labs = [lab('potassium', 6.1, 'mmol/L', '2026-06-10'), lab('potassium', 5.4, 'mmol/L', '2026-06-10')];
  const proposal = proposePrescription(clientWith({ treatment: { setting: 'hemodialysis', place: 'in-center' }, labs }), today);
  if (proposal.kind === 'barred') throw new Error('barred');
  expect(proposal.targets.potassium.kind).toBe('withheld');
  expect(proposal.targets.potassiumAdditives).toMatchObject({
    kind: 'proposed',
    range: { lo: 0, hi: 0 },
    reasons: [expect.stringContaining('6.1'), expect.any(String)],
  });
});
