import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { TargetItem } from './target.ts';

/** 70 kg at 165 cm, nothing of wasting met or open: no ceiling is lifted and nothing is held back. */
const well: Partial<Assessment> = {
  labs: [lab('albumin', 4.2, 'g/dL', '2026-06-12')],
  muscleLoss: { percent3Months: 0 },
  intake: { energyKcal: 2100, proteinG: 80 },
};
const hemodialysis = (more: object = {}): Partial<Assessment> => ({
  treatment: { setting: 'hemodialysis', place: 'in-center', ...more },
  weighings: [weighing('dry', 70)],
});
const peritoneal = (more: object = {}): Partial<Assessment> => ({
  treatment: { setting: 'peritoneal-dialysis', method: 'capd', ...more },
  weighings: [weighing('dry', 65)],
});
const transplant = (transplantedOn: string): Partial<Assessment> => ({ treatment: { setting: 'transplant', transplantedOn } });
const stage = (value: 'G2' | 'G3b' | 'G4' | 'G5'): Partial<Assessment> => ({ stage: { value, on: '2026-01-10' } });

function targetOf(item: TargetItem, more: Partial<Assessment>) {
  const proposal = proposePrescription(clientWith({ ...well, ...more }), today);
  if (proposal.kind === 'barred') throw new Error(proposal.issues.map(({ told }) => told).join(' '));
  const target = proposal.targets[item];
  const amount = (range: { lo: number; hi: number } | undefined) => (range === undefined ? '' : `${range.lo}-${range.hi}`);
  return {
    ...target,
    amount: target.kind === 'proposed' ? `${amount(target.range)} ${target.limit}` : target.kind,
    told: target.kind === 'withheld' ? [target.why] : target.reasons,
    checks: target.kind === 'withheld' ? target.whatToCheck : [],
    others: target.alternatives.map(({ range, limit }) => (range === undefined ? 'no figure' : `${amount(range)} ${limit}`)),
  };
}

// Facts 3.1, of 70 kg.
describe('energy', () => {
  test.each<[string, Partial<Assessment>, string, readonly string[]]>([
    ['off dialysis under 60 years', { age: { years: 59 } }, '1750-2450 within', ['2450-2450 within']],
    ['off dialysis from 60 years', { age: { years: 60 } }, '1750-2450 within', ['2100-2450 within']],
    ['hemodialysis', hemodialysis(), '1750-2450 within', ['2100-Infinity at-least', '2100-2800 within', '2100-2450 within']],
    ['peritoneal dialysis, 65 kg', peritoneal(), '1625-2275 within', []],
    ['first 4 weeks of a transplant', transplant('2026-06-01'), '2450-2800 within', ['2100-2450 within']],
    ['to 8 weeks', transplant('2026-05-01'), '2100-2450 within', ['1750-2450 within']],
    ['a stable transplant', transplant('2024-01-01'), '1750-2450 within', []],
  ])('[CLT-10] %s', (_, more, amount, others) => {
    expect(targetOf('energy', more)).toMatchObject({ amount, others });
  });

  test('[CLT-10] 4 weeks are 28 days; the older texts name their age', () => {
    expect([transplant('2026-05-18'), transplant('2026-05-17')].map(more => targetOf('energy', more).amount)).toEqual([
      '2450-2800 within',
      '2100-2450 within',
    ]);
    const older = (years: number) => targetOf('energy', { age: { years } }).alternatives[0]?.says;
    expect([older(59), older(60)]).toEqual(['Older texts: 35 kcal/kg under 60 years', 'Older texts: 30-35 kcal/kg from 60 years']);
  });

  test('[CLT-10] the weight is named, and that there is no ceiling while wasting is not ruled out', () => {
    expect(targetOf('energy', {}).told).toEqual(['No edema: the actual weight. 70.0 kg (on 2026-06-10, 5 days old).']);
    const poor = targetOf('energy', { appetite: 'poor' });
    expect(poor).toMatchObject({ amount: '1750-Infinity at-least' });
    expect(poor.told[1]).toBe('Wasting, or not ruled out: this is the least, there is no ceiling.');
  });

  // Facts 3.1: 25 if obese (MOL21). At 200 cm BMI 30 is 120 kg.
  test('[CLT-10] 25 kcal/kg beside it for a stable transplant over BMI 30, not frail', () => {
    const of = (kg: number, more: Partial<Assessment> = {}) =>
      targetOf('energy', {
        ...transplant('2024-01-01'),
        height: { value: 200, unit: 'cm' },
        weighings: [weighing('actual', kg)],
        intake: { energyKcal: 3200, proteinG: 120 },
        ...more,
      }).others;
    expect(of(122)).toEqual(['3050-3050 within']);
    expect(of(120)).toEqual([]);
    expect(of(100)).toEqual([]);
    expect(of(122, { conditions: ['frail'] })).toEqual([]);
    expect(of(122, { appetite: 'poor' })).toEqual([]);
  });

  test('[CLT-10] without a weight, or with bags that cannot be read, it is withheld with what to enter', () => {
    expect(targetOf('energy', { weighings: [] })).toMatchObject({
      told: ['There is no weight to set it on.'],
      checks: ['Enter a weight.'],
    });
    const odd = peritoneal({ bags: [{ liters: 2, percent: 2, labeledAs: 'glucose' }] });
    expect(targetOf('energy', odd)).toMatchObject({
      told: ['The dialysate cannot be read.'],
      checks: ['2 % glucose is no usual solution: expected 1.36, 2.27 or 3.86 %.'],
    });
  });

  // Facts 3.8, worked: 195 g infused, 60 % absorbed, 398 kcal taken off 25-35 kcal/kg of 65 kg.
  test('[CLT-10] what the dialysate gives is taken off and told', () => {
    const bag = (percent: number) => ({ liters: 2, percent, labeledAs: 'dextrose' });
    const bags = [bag(1.5), bag(1.5), bag(2.5), bag(4.25)];
    const told = targetOf('energy', peritoneal({ bags })).told;
    expect(told.slice(1)).toEqual([
      '398 kcal from dialysate glucose (60 % of 195 g absorbed; 40 to 80 % is real) are taken off: this is for food.',
    ]);
    expect(targetOf('energy', peritoneal({ bags, icodextrin: true })).told[2]).toMatch(/^Icodextrin gives more/);
    expect(targetOf('energy', peritoneal()).told[1]).toMatch(/^This is the total: dialysate glucose is part of it/);
    expect(targetOf('energy', hemodialysis()).told).toHaveLength(1);
    // 10 L of 4.25 % are 425 g, 867 kcal: more than 25 kcal/kg of 34 kg. No day's need is under 0.
    const small = {
      ...peritoneal({ bags: [{ ...bag(4.25), liters: 10 }] }),
      height: { value: 120, unit: 'cm' },
      weighings: [weighing('dry', 34)],
    };
    expect(targetOf('energy', small as Partial<Assessment>).amount).toMatch(/^0-/);
  });
});

// Facts 3.2, of 70 kg.
describe('protein', () => {
  const veryLow = ['19.6-30.1 within', '21-28 within'];
  test.each<[string, Partial<Assessment>, string, readonly string[]]>([
    ['G4', stage('G4'), '56-56 within', ['38.5-42 within', ...veryLow, 'no figure']],
    ['hemodialysis', hemodialysis(), '70-84 within', ['70-84 within', '77-Infinity at-least', '84-Infinity at-least']],
    [
      'hemodialysis while wasting is not ruled out',
      { ...hemodialysis(), appetite: 'poor' },
      '70-Infinity at-least',
      ['70-84 within', '77-Infinity at-least', '84-Infinity at-least'],
    ],
    // Care rules 4 (ESPEN 2021; KDIGO AKI 2012).
    ['critically ill on hemodialysis', { ...hemodialysis(), conditions: ['critically-ill'] }, '91-105 within', ['70-105 within']],
    ['peritoneal dialysis, 65 kg', peritoneal(), '65-78 within', ['65-78 within', '78-Infinity at-least']],
    ['first 4 weeks of a transplant', transplant('2026-06-01'), '98-Infinity at-least', ['91-105 within']],
    [
      'high-dose steroid years later',
      { ...transplant('2024-01-01'), medicines: ['high-dose-steroid'] },
      '98-Infinity at-least',
      ['91-105 within'],
    ],
    ['a stable transplant in G3b', { ...transplant('2024-01-01'), ...stage('G3b') }, '56-56 within', ['42-56 within']],
    ['a stable transplant in G2', { ...transplant('2024-01-01'), ...stage('G2') }, '56-56 within', []],
  ])('[CLT-13] %s', (_, more, amount, others) => {
    expect(targetOf('protein', more)).toMatchObject({ amount, others });
  });

  // Nephrotic range over 2220 mg/g, KDIGO, from memory.
  test('[CLT-13] nephrotic-range loss leaves the very-low-protein diets out, and says so (care rules 4)', () => {
    const acr = (mgPerG: number): Partial<Assessment> => ({ labs: [...well.labs!, lab('urineAcr', mgPerG, 'mg/g')] });
    const words = 'Nephrotic-range loss of protein: no very-low-protein diet.';
    expect(targetOf('protein', { ...stage('G4'), ...acr(2220) }).others).toEqual(expect.arrayContaining(veryLow));
    expect(targetOf('protein', { ...stage('G4'), ...acr(2220) }).told).not.toContain(words);
    const nephrotic: Partial<Assessment> = { conditions: ['nephrotic-syndrome'], weighings: [weighing('estimated-dry', 70)] };
    for (const more of [acr(2221), nephrotic]) {
      const target = targetOf('protein', { ...stage('G4'), ...more });
      expect(target.others).toEqual(['38.5-42 within', 'no figure']);
      expect(target.told).toContain(words);
    }
  });

  test('[CLT-13] what is to be done before protein is restricted', () => {
    const of = (more: Partial<Assessment>) => targetOf('protein', { ...stage('G4'), ...more });
    expect(of({ conditions: ['frail'] }).checks).toEqual(['Correct that first; review then.']);
    expect(of({ conditions: ['frail'] }).others).toHaveLength(1);
    expect(of({ conditions: ['metabolically-unstable'] }).others).toHaveLength(2);
    expect(of({ appetite: 'poor' }).checks).toEqual(['Dietitian review of intake; loosen limits first.']);
    expect(targetOf('protein', {}).checks).toEqual(['The stage set by the kidney team, or two eGFRs at least 90 days apart.']);
    expect(targetOf('protein', stage('G2'))).toMatchObject({ checks: [], told: [expect.stringContaining('this is G2')] });
    expect(targetOf('protein', { ...stage('G4'), weighings: [] })).toMatchObject({
      told: ['There is no weight to set it on.'],
      checks: ['Enter a weight.'],
    });
  });

  test('[CLT-13] the weight is named', () => {
    expect(targetOf('protein', stage('G4')).told[0]).toBe('No edema: the actual weight. 70.0 kg (on 2026-06-10, 5 days old).');
  });
});

test('[CLT-10] fiber is of completed years; on dialysis what constipation does is told', () => {
  expect(targetOf('fiber', { age: { years: 50.9 } })).toMatchObject({ amount: '25-25 within' });
  expect(targetOf('fiber', {}).told).toHaveLength(1);
  expect(targetOf('fiber', hemodialysis()).told[1]).toMatch(/^Constipation/);
});
