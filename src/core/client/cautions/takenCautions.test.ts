import { expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { cautionsFor } from './cautions.ts';
import { eatingRules } from './eatingRules.ts';
import { medicineRules } from './medicineRules.ts';

const cautionsOf = (more: Partial<Assessment>) => cautionsFor(checkAssessment(clientWith(more), today).facts);
const because = (id: string, more: Partial<Assessment>) => cautionsOf(more).find(one => one.id === id)?.because;
const acetate = (unitsPerDay: number) => ({ binder: 'calcium-acetate', unitMg: 667, unitsPerDay }) as const;
const onHemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;

test.each<[string, Partial<Assessment>, string]>([
  ['binder-with-food', { binders: [{ binder: 'sevelamer', unitMg: 800, unitsPerDay: 6 }] }, 'sevelamer, 800 mg, 6 a day'],
  ['binder-chewed', { binders: [{ binder: 'lanthanum' }, { binder: 'sucroferric-oxyhydroxide' }] }, 'lanthanum, sucroferric oxyhydroxide'],
  ['calcium-binder', { binders: [acetate(6)] }, 'calcium from binders: 1014 mg a day'],
  ['calcium-dose-unknown', { binders: [{ binder: 'calcium-carbonate' }] }, 'calcium carbonate, strength not known, number not known'],
  ['ferric-citrate', { binders: [{ binder: 'ferric-citrate' }] }, 'ferric citrate; no ferritin in date'],
  [
    'ferric-citrate',
    { binders: [{ binder: 'ferric-citrate' }], labs: [lab('ferritin', 900, 'ng/mL')] },
    'ferric citrate; ferritin 900 ng/mL (on 2026-06-05, 10 days old)',
  ],
  ['aluminum-binder', { binders: [{ binder: 'aluminum-hydroxide' }] }, 'aluminum hydroxide'],
  ['magnesium-binder', { binders: [{ binder: 'magnesium-carbonate' }] }, 'magnesium carbonate; no magnesium in date'],
  ['sports-products', { addedFoods: [{ food: 'protein-powder' }] }, 'protein powder'],
])('[CLT-81] %s is told of %j', (id, more, words) => {
  expect(because(id, more)).toBe(words);
  expect(because(id, {})).toBeUndefined();
});

test('[CLT-81] a binder that the medicine list alone tells raises none of the lines that take its name', () => {
  const known = cautionsOf({}).map(({ id }) => id);
  expect(cautionsOf({ medicines: ['phosphate-binder'] }).map(({ id }) => id)).toEqual(known);
});

// KDOQI 2003 (from memory): 1500 mg from binders, 2000 mg in all. 8 × 169.01 = 1352, 9 × 169.01 = 1521.
test.each([
  [8, 0, undefined],
  [9, 0, 'calcium from binders: 1521 mg a day'],
  [8, 600, undefined],
  [8, 700, 'calcium from binders and supplements: 2052 mg a day, before food'],
])('[CLT-81] %d of 667 mg calcium acetate and %d mg from supplements: %s', (units, calciumMg, words) => {
  const addedFoods = [{ food: 'other', calciumMg, daysPerWeek: 7 }] as const;
  expect(because('calcium-load', { binders: [acetate(units)], addedFoods })).toBe(words);
});

test('[CLT-82] what a potassium binder brings and takes', () => {
  const taken = [{ binder: 'sodium-polystyrene-sulfonate', gPerDay: 15, daysPerWeek: 7 }, { binder: 'patiromer' }] as const;
  expect(because('potassium-binder', { potassiumBinders: taken })).toBe('patiromer, sodium polystyrene sulfonate');
  expect(because('potassium-binder-sodium', { potassiumBinders: taken })).toBe(
    'sodium polystyrene sulfonate: about 1500 mg of sodium a day',
  );
  expect(because('patiromer', { potassiumBinders: taken })).toBe('patiromer');
  expect(because('potassium-binder-sodium', { potassiumBinders: [taken[1]] })).toBeUndefined();
});

test.each<[string, Partial<Assessment>, string]>([
  ['gout', { conditions: ['gout'] }, 'gout'],
  ['gout', { conditions: ['gout'], medicines: ['nsaid', 'loop-diuretic', 'statin'] }, 'gout, loop diuretic, NSAID'],
  ['bariatric-surgery', { conditions: ['bariatric-surgery'] }, 'bariatric surgery'],
  ['gastroparesis', { conditions: ['gastroparesis'] }, 'gastroparesis'],
  ['swallowing', { conditions: ['swallowing-difficulty'] }, 'swallowing difficulty'],
  ['vegan-b12', { conditions: ['vegan-eating'] }, 'vegan eating'],
  ['short-of-food', { conditions: ['short-of-food'], foodAccess: 'no stove' }, 'short of food: no stove'],
  ['meal-on-dialysis', { ...onHemodialysis, addedFoods: [{ food: 'meal-on-dialysis' }] }, 'meal on dialysis'],
  [
    'meal-on-dialysis',
    {
      ...onHemodialysis,
      addedFoods: [{ food: 'meal-on-dialysis' }],
      conditions: ['hypotension', 'swallowing-difficulty'],
      symptoms: ['vomiting'],
    },
    'meal on dialysis; low blood pressure; swallowing difficulty; vomiting',
  ],
])('[CLT-85] %s is told of %j', (id, more, words) => {
  expect(because(id, more)).toBe(words);
  expect(because(id, {})).toBeUndefined();
});

test('[CLT-86] a statin asks about grapefruit, a diuretic is told with what it may have lowered', () => {
  expect(because('statin-grapefruit', { medicines: ['statin'] })).toBe('statin');
  const labs = [lab('potassium', 3.2, 'mmol/L'), lab('sodium', 131, 'mmol/L')];
  expect(because('diuretic-low', { medicines: ['thiazide-diuretic'], labs })).toMatch(
    /^thiazide diuretic; potassium 3\.2 .*; sodium 131 /u,
  );
  expect(because('diuretic-low', { medicines: ['statin'], labs })).toBeUndefined();
  expect(because('diuretic-low', { medicines: ['loop-diuretic'], labs: [lab('sodium', 139, 'mmol/L')] })).toBeUndefined();
});

test('[CLT-86] a diuretic by its kind counts among the drugs of refeeding risk like one whose kind is not known', () => {
  const starved: Partial<Assessment> = { intake: { littleForDays: 7 } };
  for (const medicine of ['loop-diuretic', 'thiazide-diuretic', 'diuretic'] as const)
    expect(because('refeeding', { ...starved, medicines: [medicine] })).toContain('little intake for 7 days');
  expect(because('refeeding', { ...starved, medicines: ['statin'] })).toBeUndefined();
});

test('[CLT-81] [CLT-85] every one of these rules has a source that says what it is, and none needs a contact', () => {
  for (const { id, source, contact } of [...medicineRules, ...eatingRules]) {
    expect(sourceWords(source), id).toMatch(/own rule|to be confirmed|as quoted|ISRNM|Semin Dial|KDOQI|KDIGO/u);
    expect(contact, id).toBeUndefined();
  }
});
