import { describe, expect, it } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { Position, Target, TargetItem } from './target.ts';

// Twelve invented clients with the targets that a reader of the guidelines would set by hand. Each expectation names the section of the
// clinical facts sheet that it was read from; both guideline families stand where they differ.

function targetsOf(assessment: Assessment, pick?: WeightBasisId): Readonly<Record<TargetItem, Target>> {
  const proposal = proposePrescription(assessment, today, pick);
  if (proposal.kind === 'barred') throw new Error(proposal.issues.map(({ told }) => told).join(' '));
  return proposal.targets;
}

/** "38.5-42 g": a range as it is read, `∞` for an open end. */
function read(target: Target): string {
  if (target.kind !== 'proposed') return target.kind;
  return `${words(target)} ${target.unit}`;
}

function words({ range }: { range?: { lo: number; hi: number } }): string {
  if (range === undefined) return 'no figure';
  const tenth = (value: number) => (value === Number.POSITIVE_INFINITY ? '∞' : String(Math.round(value * 10) / 10));
  return `${tenth(range.lo)}-${tenth(range.hi)}`;
}

const others = (target: Target): readonly string[] => target.alternatives.map((one: Position) => words(one));
const why = (target: Target): string => (target.kind === 'withheld' ? target.why : target.reasons.join(' '));

const stage = (value: 'G3a' | 'G3b' | 'G4' | 'G5') => ({ stage: { value, on: '2026-01-10' } });
const normalBlood = [lab('potassium', 4.6, 'mmol/L'), lab('phosphate', 3.6, 'mg/dL')];
const dry = (kg: number) => ({ weighings: [weighing('dry', kg)] });
const inCenter = { setting: 'hemodialysis', place: 'in-center' } as const;

describe('twelve clients', () => {
  it('[CLT-20] 1: G3b, no diabetes, stable, 70 kg, blood in range', () => {
    const targets = targetsOf(clientWith({ ...stage('G3b'), labs: normalBlood }));
    expect(read(targets.energy)).toBe('1750-2450 kcal'); // 3.1: 25-35
    expect(read(targets.protein)).toBe('56-56 g'); // 3.2: KDIGO 0.8
    expect(others(targets.protein)).toEqual(['38.5-42', '19.6-30.1', '21-28', 'no figure']); // 3.2: KDOQI 0.55-0.60; analogs; NICE
    expect(targets.protein).toMatchObject({ needsChoice: true, weightBasis: 'actual', basis: 'per-day', perKg: { lo: 0.8, hi: 0.8 } });
    expect(read(targets.sodium)).toBe('0-2300 mg'); // 3.3: KDOQI under 2.3 g
    expect(others(targets.sodium)).toEqual(['0-2000']); // 3.3: KDIGO under 2 g
    expect(targets.sodium).toMatchObject({ limit: 'below', needsChoice: true });
    expect(read(targets.potassium)).toBe('no-limit'); // 3.4
    expect(read(targets.phosphorus)).toBe('no-limit'); // 3.5: normal serum
    expect(read(targets.calcium)).toBe('800-1000 mg'); // 3.5: CKD 3-4
    expect(read(targets.fluid)).toBe('no-limit'); // 3.6
    expect(read(targets.fiber)).toBe('21-21 g'); // care rules 4: a woman above 50
  });

  it('[CLT-20] 2: G4 with diabetes and potassium high twice: nothing is limited before the other causes', () => {
    const labs = [lab('potassium', 5.3, 'mmol/L', '2026-05-20'), lab('potassium', 5.4, 'mmol/L'), lab('phosphate', 4.2, 'mg/dL')];
    const client = clientWith({ ...stage('G4'), diabetes: true, medicines: ['raas-inhibitor'], labs });
    const targets = targetsOf(client);
    expect(read(targets.protein)).toBe('56-56 g'); // 3.2: KDIGO Diabetes 0.8
    expect(others(targets.protein)).toEqual(['42-56', '56-63', 'no figure']); // 3.2: KDOQI 0.6-0.8; a review 0.8-0.9; NICE
    expect(others(targets.sodium)).toEqual(['0-2000', '0-2000']); // 3.3: KDIGO 2024 and Diabetes 2022
    expect(read(targets.potassium)).toBe('withheld'); // 3.4: section 4.4 first
    expect(why(targets.potassium)).toContain('The other causes come before food.');
    expect(others(targets.potassium)).toEqual(['2000-3000']); // shown, not proposed
    expect(read(targets.potassiumAdditives)).toBe('0-0 named on the label'); // care rules 3: no nourishment is lost
    expect((targets.potassium as { whatToCheck: readonly string[] }).whatToCheck[0]).toContain('On record: RAAS inhibitor'); // the client's own causes first

    const checked = targetsOf({ ...client, potassiumSteps: { causesCheckedOn: '2026-06-06' } });
    expect(read(checked.potassium)).toBe('withheld'); // 3.4: additives, salt substitutes, juices, portions
    expect(read(checked.potassiumAdditives)).toBe('0-0 named on the label');

    const cut = { causesCheckedOn: '2026-06-05', additivesCutOn: '2026-05-22' };
    const still = targetsOf({ ...client, potassiumSteps: cut });
    expect(read(still.potassium)).toBe('2000-3000 mg'); // 3.4: if still high
    expect(others(still.potassium)).toEqual(['no figure']); // KDOQI and KDIGO give none
  });

  it('[CLT-20] 3: G5 and frail: protein is not restricted until that is corrected', () => {
    const targets = targetsOf(clientWith({ ...stage('G5'), conditions: ['frail'], labs: [...normalBlood, lab('albumin', 4, 'g/dL')] }));
    expect(read(targets.protein)).toBe('withheld'); // 3.2: frail
    expect(read(targets.energy)).toBe('1750-2450 kcal'); // 3.1
    expect(read(targets.calcium)).toBe('withheld'); // 3.5: the figure is for CKD 3-4
  });

  it('[CLT-20] 4: in-center hemodialysis, dry 70 kg, urine 300 mL, potassium 5.9 and phosphate 6.4 twice after the causes were checked', () => {
    const client = clientWith({
      treatment: { ...inCenter, sessionHours: 4, ultrafiltrationLimitMlPerKgH: 10 },
      ...dry(70),
      urineMlPerDay: { value: 300, on: '2026-06-01' },
      labs: [lab('potassium', 5.9, 'mmol/L'), lab('phosphate', 6.4, 'mg/dL'), lab('phosphate', 6.2, 'mg/dL', '2026-05-08')],
      potassiumSteps: { causesCheckedOn: '2026-06-08' },
    });
    const targets = targetsOf(client);
    expect(read(targets.energy)).toBe('1750-2450 kcal'); // 3.1: KDOQI
    expect(others(targets.energy)).toEqual(['2100-∞', '2100-2800', '2100-2450']); // 3.1: European, ISRNM
    expect(read(targets.protein)).toBe('70-84 g'); // 3.2: KDOQI 1.0-1.2
    expect(others(targets.protein)).toEqual(['70-84', '77-∞', '84-∞']); // 3.2: KDIGO; European 1.1; ISRNM 1.2
    expect(read(targets.sodium)).toBe('0-2300 mg'); // 3.3
    expect(others(targets.sodium)).toEqual(['2000-3000']);
    expect(read(targets.potassium)).toBe('0-2730 mg'); // 3.4: European 70 mmol
    expect(others(targets.potassium)).toEqual(['no figure', '2000-4000', '0-2800']); // 3.4: KDOQI none; 2-4 g; 40 mg/kg
    expect(read(targets.phosphorus)).toBe('withheld'); // care rules 4: 70-84 g of protein bring 700 to 1304 mg
    expect(why(targets.phosphorus)).toContain('700 to 1304 mg'); // facts 5, F16: 128 + 14 × 84; 6.2: 10 × 70
    expect(others(targets.phosphorus)).toEqual(['no figure', '800-1000', '0-1000']); // 3.5: KDOQI 2020; older number; European
    expect(read(targets.phosphateAdditives)).toBe('0-0 named on the label');
    expect(read(targets.calcium)).toBe('withheld'); // 3.5: by vitamin D analog and calcimimetic
    expect(others(targets.calcium)).toEqual(['0-2000', '0-800']);
    expect(read(targets.fluid)).toBe('800-1300 mL'); // 3.6: urine + 500 to 1000
    expect(others(targets.fluid)).toEqual(['0-1700', '0-1233.3']); // 3.6 worked: 1700 and 1233 mL
  });

  it('[CLT-20] 5: in-center hemodialysis, blood in range: no potassium and no phosphorus number', () => {
    const targets = targetsOf(
      clientWith({ treatment: inCenter, ...dry(62), labs: [lab('potassium', 5.1, 'mmol/L'), lab('phosphate', 4.9, 'mg/dL')] }),
    );
    expect(read(targets.potassium)).toBe('no-limit'); // 3.4: moderate, no number unless set
    expect(read(targets.phosphorus)).toBe('no-limit'); // 3.5, 4.2
    expect(read(targets.fluid)).toBe('withheld'); // 3.6: urine is not known
  });

  it('[CLT-20] 6: peritoneal dialysis (CAPD), 65 kg: dialysate glucose is taken off, low potassium is fed', () => {
    const bag = (percent: number) => ({ liters: 2, percent, labeledAs: 'dextrose' }) as const;
    const targets = targetsOf(
      clientWith({
        treatment: { setting: 'peritoneal-dialysis', method: 'capd', bags: [bag(1.5), bag(1.5), bag(2.5), bag(4.25)] },
        ...dry(65),
        labs: [lab('potassium', 3.3, 'mmol/L')],
      }),
    );
    expect(read(targets.energy)).toBe('1227.2-1877.2 kcal'); // 3.8: 25-35 × 65 less 398 kcal
    expect(read(targets.protein)).toBe('65-78 g'); // 3.2
    expect(others(targets.protein)).toEqual(['65-78', '78-∞']);
    expect(read(targets.potassium)).toBe('no-limit'); // 3.4: add foods under 3.5
    expect(why(targets.potassium)).toContain('foods with potassium are added');
    expect(read(targets.fluid)).toBe('withheld'); // 3.6: by ultrafiltration, urine, edema, BP
    expect(others(targets.sodium)).toEqual(['2000-4000']); // 3.3
  });

  it('[CLT-20] 7: peritonitis on APD with high potassium: protein up to 1.5, potassium has no figure', () => {
    const targets = targetsOf(
      clientWith({
        treatment: { setting: 'peritoneal-dialysis', method: 'apd' },
        ...dry(60),
        conditions: ['peritonitis'],
        labs: [lab('potassium', 5.7, 'mmol/L')],
        potassiumSteps: { causesCheckedOn: '2026-06-06', additivesCutOn: '2026-06-01' },
      }),
    );
    expect(others(targets.protein)).toEqual(['60-72', '72-∞', '60-90']); // 3.2
    expect(read(targets.potassium)).toBe('withheld'); // 3.4: individual
  });

  it('[CLT-20] 8: transplant two weeks ago, low phosphate', () => {
    const targets = targetsOf(
      clientWith({
        treatment: { setting: 'transplant', transplantedOn: '2026-06-01' },
        weighings: [weighing('actual', 60)],
        medicines: ['tacrolimus', 'high-dose-steroid'],
        labs: [lab('phosphate', 1.9, 'mg/dL', '2026-06-12', { confirmed: true }), lab('potassium', 4.8, 'mmol/L', '2026-06-12')],
      }),
    );
    expect(read(targets.energy)).toBe('2100-∞ kcal'); // 3.1: 35-40; BMI 22.0 and nothing else known: wasting is not ruled out, no ceiling
    expect(others(targets.energy)).toEqual(['1800-∞']); // 3.1: 30-35 common
    expect(read(targets.protein)).toBe('84-∞ g'); // 3.2: at least 1.4
    expect(others(targets.protein)).toEqual(['78-90']);
    expect(why(targets.phosphorus)).toContain('high-phosphorus food or a supplement'); // 3.5
    expect(read(targets.fluid)).toBe('2000-3000 mL'); // 3.6
    expect(read(targets.calcium)).toBe('withheld'); // 3.5: too few data
  });

  it('[CLT-20] 9: stable transplant with obesity: a choice of weight', () => {
    const client = clientWith({
      treatment: { setting: 'transplant', transplantedOn: '2022-03-01' },
      height: { value: 163, unit: 'cm' },
      weighings: [weighing('actual', 98), weighing('standard', 62)],
      ...stage('G3a'),
      labs: normalBlood,
    });
    const proposal = proposePrescription(client, today);
    if (proposal.kind === 'barred' || proposal.weight.kind === 'none') throw new Error('barred');
    expect(proposal.weight).toMatchObject({ needsChoice: true, chosen: { id: 'adjusted' } });
    expect(proposal.weight.chosen.kg).toBeCloseTo(65.6, 1); // 2, W3
    expect(proposal.weight.others.map(({ id, kg }) => [id, Math.round(kg * 10) / 10])).toEqual([
      ['actual', 98],
      ['adjusted-edema-free', 89], // 2, W4
      ['ideal', 54.8],
    ]);
    expect(targetsOf(client, 'actual').protein).toMatchObject({ range: { lo: 78.4, hi: 78.4 }, weightBasis: 'actual' }); // 3.2: 0.8
    expect(others(targetsOf(client, 'actual').protein)).toEqual(['58.8-78.4']); // 3.2: 0.6-0.8 with CKD 3-5T
    expect(others(targetsOf(client, 'actual').energy)).toEqual(['2450-2450']); // 3.1: 25 if obese
  });

  it('[CLT-20] 10: hemodialysis, wasting: no potassium or phosphorus restriction, protein stands as a need', () => {
    const targets = targetsOf(
      clientWith({
        treatment: inCenter,
        ...dry(48),
        intake: { energyKcal: 950, proteinG: 34 },
        labs: [
          lab('albumin', 3.1, 'g/dL'),
          lab('potassium', 5.8, 'mmol/L'),
          lab('phosphate', 6.1, 'mg/dL'),
          lab('phosphate', 6, 'mg/dL', '2026-05-05'),
        ],
        potassiumSteps: { causesCheckedOn: '2026-06-06' },
      }),
    );
    expect(read(targets.protein)).toBe('48-∞ g'); // 3.2: 1.0-1.2, without a ceiling while wasting (care rules 3)
    expect(read(targets.energy)).toBe('1200-∞ kcal');
    expect(read(targets.potassium)).toBe('withheld'); // 9.3, 8
    expect(read(targets.phosphorus)).toBe('withheld');
    expect(read(targets.phosphateAdditives)).toBe('0-0 named on the label'); // care rules 3: never stopped
    expect(why(targets.phosphorus)).toContain('3 of 4 groups');
  });

  it('[CLT-20] 11: G4 with nephrotic edema and calcium oxalate stones: estimated dry weight, clashes shown', () => {
    const targets = targetsOf(
      clientWith({
        ...stage('G4'),
        conditions: ['edema', 'nephrotic-syndrome', 'calcium-oxalate-stones'],
        weighings: [weighing('actual', 82), weighing('estimated-dry', 74)],
        labs: normalBlood,
      }),
    );
    expect(targets.protein).toMatchObject({ weightBasis: 'estimated-dry', range: { lo: 59.2, hi: 59.2 } }); // 2; 3.2
    expect(read(targets.calcium)).toBe('800-1000 mg'); // 3.5; the CKD setting wins
    expect(others(targets.calcium)).toEqual(['1000-1200']); // 3.9
    expect(read(targets.fluid)).toBe('withheld'); // 3.6: overloaded
    expect(others(targets.sodium)).toEqual(['0-2000', '0-2300']); // 3.3; 3.9
  });

  it('[CLT-20] 12: salt-losing kidney disease in conservative care: nothing is restricted', () => {
    const targets = targetsOf(
      clientWith({
        treatment: { setting: 'ckd-not-on-dialysis', conservative: true },
        ...stage('G5'),
        conditions: ['salt-losing-kidney-disease'],
        labs: normalBlood,
      }),
    );
    for (const item of ['protein', 'sodium', 'potassium', 'phosphorus', 'calcium', 'fluid'] as const) {
      expect(read(targets[item]), item).toBe('no-limit'); // 1.3; 3.3 for sodium
    }
  });
});

describe('conditions that turn a target', () => {
  it('[CLT-10] sodium is not restricted in salt-losing kidney disease; low pressure or an ileostomy alone ask first (care rules 4)', () => {
    expect(read(targetsOf(clientWith({ conditions: ['salt-losing-kidney-disease'] })).sodium)).toBe('no-limit');
    for (const condition of ['ileostomy', 'hypotension'] as const) {
      const { sodium } = targetsOf(clientWith({ conditions: [condition] }));
      expect(read(sodium)).toBe('0-2300 mg');
      expect(why(sodium)).toContain('ask the kidney team before it is limited');
    }
  });

  it('[CLT-13] in acute illness protein is a need of 1.0 g/kg and more (ESPEN 2021, as quoted)', () => {
    expect(read(targetsOf(clientWith({ ...stage('G4'), conditions: ['acute-illness'] })).protein)).toBe('70-∞ g');
  });

  it.each(['frail', 'sarcopenia', 'metabolically-unstable'] as const)(
    '[CLT-13] protein is not restricted with %s (facts 3.2)',
    condition => {
      expect(read(targetsOf(clientWith({ ...stage('G4'), conditions: [condition] })).protein)).toBe('withheld');
    },
  );

  it('[CLT-13] loss of 5 % in 3 or 10 % in 6 months, or a poor appetite, blocks a restriction; less does not (facts 8, 9.3)', () => {
    const protein = (more: Partial<Assessment>) => read(targetsOf(clientWith({ ...stage('G4'), ...more })).protein);
    expect(protein({ weightLoss: { percent3Months: 5 } })).toBe('withheld');
    expect(protein({ weightLoss: { percent6Months: 10 } })).toBe('withheld');
    expect(protein({ appetite: 'poor' })).toBe('withheld');
    expect(protein({ weightLoss: { percent3Months: 4.9, percent6Months: 9.9 }, appetite: 'fair' })).toBe('56-56 g');
  });

  it('[CLT-9] protein without a stage, or in G2, is withheld with the ceiling beside it (facts 3.2)', () => {
    expect(targetsOf(clientWith()).protein).toMatchObject({ kind: 'withheld', whatToCheck: [expect.stringContaining('two eGFRs')] });
    expect(targetsOf(clientWith({ stage: { value: 'G2', on: '2026-01-10' } })).protein).toMatchObject({
      kind: 'withheld',
      whatToCheck: [],
    });
  });

  it('[CLT-10] calcium is not proposed with active vitamin D (facts 3.5)', () => {
    expect(read(targetsOf(clientWith({ ...stage('G4'), medicines: ['active-vitamin-d'] })).calcium)).toBe('withheld');
  });

  it('[CLT-10] five weeks after a transplant: 30-35 kcal/kg and 1.3-1.5 g/kg, both common practice (facts 3.1, 3.2)', () => {
    const targets = targetsOf(clientWith({ treatment: { setting: 'transplant', transplantedOn: '2026-05-11' } }));
    expect([read(targets.energy), read(targets.protein)]).toEqual(['2100-2450 kcal', '91-105 g']);
    expect([others(targets.energy), others(targets.protein)]).toEqual([['1750-2450'], ['56-56']]);
  });

  it('[CLT-10] fluid goes to the team with overload or low sodium (facts 3.6)', () => {
    expect(read(targetsOf(clientWith({ conditions: ['heart-failure'] })).fluid)).toBe('withheld');
    expect(read(targetsOf(clientWith({ labs: [lab('sodium', 134, 'mmol/L')] })).fluid)).toBe('withheld');
    expect(read(targetsOf(clientWith({ labs: [lab('sodium', 135, 'mmol/L')] })).fluid)).toBe('no-limit');
  });

  it('[CLT-10] refeeding risk is told beside the energy, with a slow start by the medical team (facts 8)', () => {
    expect(why(targetsOf(clientWith({ weighings: [weighing('actual', 43)] })).energy)).toContain('Refeeding risk (BMI 15.8)');
  });

  it('[CLT-14] normal phosphate with a high PTH: no limit, the older number is shown (facts 3.5)', () => {
    const targets = targetsOf(clientWith({ ...stage('G4'), labs: [lab('phosphate', 4, 'mg/dL'), lab('pth', 62.5, 'pmol/L')] }));
    expect(read(targets.phosphorus)).toBe('no-limit');
    expect(others(targets.phosphorus)).toEqual(['800-1000']);
  });
});

describe('what every target carries', () => {
  it('[CLT-10] unit, basis, a reason and a source, and "to be confirmed" where a figure is from memory', () => {
    for (const target of Object.values(targetsOf(clientWith({ treatment: inCenter, ...dry(70), labs: normalBlood })))) {
      expect(target.sources.length).toBeGreaterThan(0);
      expect(target.toBeConfirmed).toBe(target.sources.some(({ toBeConfirmed }) => toBeConfirmed === true));
      if (target.kind === 'proposed') expect(target).toMatchObject({ basis: 'per-day', unit: expect.any(String) });
      if (target.kind === 'withheld') expect(target.why).not.toBe('');
      else expect(target.reasons.length).toBeGreaterThan(0);
      for (const { sources } of target.alternatives) expect(sources.length).toBeGreaterThan(0);
    }
  });
});
