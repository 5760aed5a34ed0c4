import { describe, expect, test } from 'vitest';
import type { TakenFood } from '#core/client/assessment/amountsTaken.ts';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { Target, TargetItem } from './target.ts';

const stage = { value: 'G4', on: '2026-01-10' } as const;

function targetOf(item: TargetItem, more: Partial<Assessment>): Target {
  const proposal = proposePrescription(clientWith({ stage, ...more }), today);
  if (proposal.kind === 'barred') throw new Error(JSON.stringify(proposal.issues));
  return proposal.targets[item];
}

const wordsOf = (target: Target): string => (target.kind === 'withheld' ? target.why : target.reasons.join(' '));
const says = (item: TargetItem, more: Partial<Assessment>): string => wordsOf(targetOf(item, more));
const acetate = (unitsPerDay: number) => ({ binder: 'calcium-acetate', unitMg: 667, unitsPerDay }) as const;
const supplement = { food: 'oral-supplement', daysPerWeek: 7 } as const;

describe('calcium of food, binders and supplements together', () => {
  // G4 without active vitamin D: 800-1000 mg in all. 3 × 169.01 = 507 mg; 1000 − 507 = 493; 6 × 169.01 = 1014.
  test('[CLT-80] what binders bring is told by formula, with what is left for food', () => {
    const told = targetOf('calcium', { binders: [acetate(3)] });
    expect(wordsOf(told)).toContain('Binders (calcium acetate) bring 507 mg of calcium a day. Up to 493 mg of it are left for food.');
    expect(told.sources.map(({ text }) => text)).toContain('calcium by formula and IUPAC 2021 atomic weights');
    expect(says('calcium', { binders: [acetate(3)], addedFoods: [{ ...supplement, calciumMg: 300 }] })).toContain('Up to 193 mg of it');
    expect(says('calcium', { binders: [acetate(6)] })).toContain('That is the whole of 1000 mg before any food');
  });

  test('[CLT-80] a dose that is not known is asked for, and nothing is left for food by it', () => {
    const asked = 'What is left for food is not known';
    expect(says('calcium', { binders: [{ binder: 'calcium-acetate' }] })).toContain(asked);
    expect(says('calcium', { medicines: ['phosphate-binder'] })).toContain(asked);
    expect(says('calcium', { binders: [acetate(3)], supplements: ['calcium'] })).toContain(asked);
    expect(says('calcium', { binders: [{ binder: 'sevelamer' }] })).not.toMatch(/binder.*bring|left for food/iu);
  });

  test('[CLT-80] on dialysis the figure stays withheld, and the load is told with it', () => {
    const treatment = { setting: 'hemodialysis', place: 'in-center' } as const;
    const told = targetOf('calcium', { treatment, binders: [acetate(6)] });
    expect(told.kind).toBe('withheld');
    expect(wordsOf(told)).toContain('Binders (calcium acetate) bring 1014 mg of calcium a day.');
  });
});

test('[CLT-82] a potassium binder is told beside potassium and lifts or sets nothing', () => {
  const binder = { potassiumBinders: [{ binder: 'sodium-zirconium-cyclosilicate', gPerDay: 10, daysPerWeek: 7 }] } as const;
  for (const value of [3.1, 4.5, 5.3, 6.2]) {
    const labs = [lab('potassium', value, 'mmol/L')];
    const [without, withIt] = [targetOf('potassium', { labs }), targetOf('potassium', { labs, ...binder })];
    expect(withIt.kind, `${value}`).toBe(without.kind);
    expect(wordsOf(withIt)).toContain('With sodium zirconium cyclosilicate on record the result is one with the binder');
  }
  // 10 g × 80 mg/g.
  expect(says('sodium', binder)).toContain('Beside food sodium zirconium cyclosilicate brings 800 mg of sodium a day');
  expect(says('sodium', { potassiumBinders: [{ binder: 'patiromer', gPerDay: 8.4 }] })).not.toContain('patiromer');
});

test.each<[TargetItem, Omit<TakenFood, 'food'>, string]>([
  ['energy', { energyKcal: 350 }, '350 kcal of energy'],
  ['protein', { proteinG: 20 }, '20 g of protein'],
  ['sodium', { sodiumMg: 200 }, '200 mg of sodium'],
  ['potassium', { potassiumMg: 250 }, '250 mg of potassium'],
  ['phosphorus', { phosphorusMg: 150 }, '150 mg of phosphorus'],
  ['calcium', { calciumMg: 300 }, '300 mg of calcium'],
  ['fluid', { fluidMl: 237 }, '237 mL of fluid'],
])('[CLT-83] what a supplement brings is told beside %s', (item, amounts, words) => {
  const told = says(item, { addedFoods: [{ ...supplement, ...amounts }] });
  expect(told).toContain(`Supplements and feeds bring ${words} a day, which are part of the whole day’s.`);
});

test('[CLT-83] an amount that nobody knows is told beside a figure, and not beside what has none', () => {
  expect(says('energy', { addedFoods: [supplement] })).toContain('bring an amount of energy that is not known a day');
  expect(targetOf('potassium', { addedFoods: [supplement] }).kind).toBe('withheld');
  expect(says('potassium', { addedFoods: [supplement] })).not.toContain('Supplements and feeds');
});

describe('ways of eating', () => {
  test('[CLT-85] plant-based eating changes no figure, and says what it bears on', () => {
    for (const condition of ['vegetarian-eating', 'vegan-eating'] as const) {
      const [plain, plants] = [targetOf('protein', {}), targetOf('protein', { conditions: [condition] })];
      expect(plants.kind === 'proposed' && plants.range).toEqual(plain.kind === 'proposed' && plain.range);
      expect(wordsOf(plants)).toContain('Plant-based eating does not change the figure');
      // Facts 6.1: plants 20-40 %, animal 40-60 %.
      expect(says('phosphorus', { conditions: [condition] })).toContain('in plants 20 to 40 % is absorbed');
      expect(says('potassium', { conditions: [condition] })).toContain('no reason to limit potassium');
    }
  });

  test('[CLT-85] gastroparesis gives up the figure for fiber', () => {
    expect(targetOf('fiber', {}).kind).toBe('proposed');
    expect(targetOf('fiber', { conditions: ['gastroparesis'] })).toMatchObject({
      kind: 'withheld',
      why: expect.stringContaining('Gastroparesis'),
    });
  });

  test('[CLT-85] thickened drinks count as fluid; after bariatric surgery protein is asked about', () => {
    expect(says('fluid', { conditions: ['swallowing-difficulty'] })).toContain('Thickened drinks count as fluid.');
    expect(says('protein', { conditions: ['bariatric-surgery'] })).toContain('ask the surgical team before less is set');
  });

  test('[CLT-85] short of food: a figure for potassium waits for a question and stays in sight', () => {
    const treatment = { setting: 'hemodialysis', place: 'in-center' } as const;
    const high: Partial<Assessment> = {
      treatment,
      weighings: [weighing('dry', 70)],
      labs: [lab('potassium', 5.9, 'mmol/L'), lab('albumin', 4.2, 'g/dL')],
      potassiumSteps: { causesCheckedOn: '2026-06-10' },
    };
    const plain = targetOf('potassium', high);
    const short = targetOf('potassium', { ...high, conditions: ['short-of-food'] });
    expect(plain).toMatchObject({ kind: 'proposed', range: { lo: 0, hi: 2730 } });
    expect(short).toMatchObject({ kind: 'withheld', why: expect.stringContaining('Short of food'), alternatives: expect.any(Array) });
    expect(short.alternatives[0]).toMatchObject({ range: { lo: 0, hi: 2730 }, limit: 'at-most' });
    expect(targetOf('sodium', { conditions: ['short-of-food'] }).kind).toBe('proposed');
    expect(says('sodium', { conditions: ['short-of-food'] })).toContain('drained and rinsed');
  });
});

test.each(['loop-diuretic', 'thiazide-diuretic', 'diuretic'] as const)('[CLT-86] a %s is told beside a low potassium alone', medicine => {
  const of = (value: number) => says('potassium', { labs: [lab('potassium', value, 'mmol/L')], medicines: [medicine] });
  expect(of(3.2)).toContain('which can lower potassium; its dose is the prescriber’s');
  expect(of(4.2)).not.toContain('lower potassium');
});
