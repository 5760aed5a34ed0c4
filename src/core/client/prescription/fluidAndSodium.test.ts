import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { Condition, Symptom } from '#core/client/assessment/vocabularies.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { TargetItem } from './target.ts';

const urine = (value: number, on = '2026-06-01'): Partial<Assessment> => ({ urineMlPerDay: { value, on } });
const hemodialysis = (more: object = {}): Partial<Assessment> => ({
  treatment: { setting: 'hemodialysis', place: 'in-center', ...more },
  weighings: [weighing('dry', 70)],
  ...urine(300),
});
const peritoneal: Partial<Assessment> = { treatment: { setting: 'peritoneal-dialysis', method: 'capd' } };
const transplant = (days: number): Partial<Assessment> => ({
  treatment: { setting: 'transplant', transplantedOn: addDays(today, -days) },
});

function targetOf(item: TargetItem, more: Partial<Assessment>) {
  const proposal = proposePrescription(clientWith(more), today);
  if (proposal.kind === 'barred') throw new Error(proposal.issues.map(({ told }) => told).join(' '));
  const target = proposal.targets[item];
  return {
    ...target,
    words: target.kind === 'withheld' ? target.why : target.reasons.join(' '),
    others: target.alternatives.map(({ range }) => (range === undefined ? 'no figure' : `${range.lo}-${Math.round(range.hi)}`)),
  };
}

// Care rules 4: overload, heart failure, sodium under 135 or urine under 500 mL ask the kidney team before every liberal figure.
describe('fluid off hemodialysis', () => {
  const team = ': the kidney team sets the amount.';
  test.each<[string, Partial<Assessment>, string]>([
    ['overload', { conditions: ['overload'] }, `There is fluid overload${team}`],
    ['edema', { conditions: ['edema'] }, `There is fluid overload${team}`],
    ['ascites and heart failure', { conditions: ['ascites', 'heart-failure'] }, `There is fluid overload. Heart failure${team}`],
    ['swelling', { symptoms: ['swelling'] }, `Swelling or breathlessness${team}`],
    ['breathlessness among others', { symptoms: ['vomiting', 'breathlessness'] }, `Swelling or breathlessness${team}`],
    ['sodium 134', { labs: [lab('sodium', 134, 'mmol/L')] }, `Low sodium: sodium 134 mmol/L (on 2026-06-05, 10 days old)${team}`],
    ['urine 499 mL', urine(499), `Urine under 500 mL: 499 mL a day (on 2026-06-01, 14 days old)${team}`],
    [
      'urine 499 mL early after a transplant',
      { ...transplant(20), ...urine(499) },
      `Urine under 500 mL: 499 mL a day (on 2026-06-01, 14 days old)${team}`,
    ],
    ['peritoneal dialysis', peritoneal, 'On peritoneal dialysis it goes by ultrafiltration, urine, edema and blood pressure.'],
  ])('[CLT-10] %s: withheld', (_, more, words) => {
    expect(targetOf('fluid', more)).toMatchObject({ kind: 'withheld', words });
  });

  test.each<[string, Partial<Assessment>]>([
    ['nothing', {}],
    ['vomiting', { symptoms: ['vomiting'] }],
    ['sodium 135', { labs: [lab('sodium', 135, 'mmol/L')] }],
    ['urine 500 mL', urine(500)],
    ['little urine 201 days ago', urine(300, addDays(today, -201))],
    ['a transplant 57 days ago', transplant(57)],
  ])('[CLT-10] %s: no limit', (_, more) => {
    expect(targetOf('fluid', more)).toMatchObject({ kind: 'no-limit', words: 'No limit unless overloaded or low in sodium.', others: [] });
  });

  test('[CLT-10] to 8 weeks after a transplant 2 to 3 L are a need', () => {
    expect(targetOf('fluid', transplant(56))).toMatchObject({ kind: 'proposed', limit: 'at-least', range: { lo: 2000, hi: 3000 } });
  });

  test('[CLT-10] stones ask for more, as quoted (facts 3.9)', () => {
    expect(targetOf('fluid', { conditions: ['calcium-oxalate-stones'] }).alternatives).toMatchObject([
      { sources: [{ text: 'AUA 2014', secondHand: true }] },
    ]);
  });
});

// Facts 3.6: a day's urine and 500 to 1000 mL; worked: UFR 10, 4 h, 70 kg, urine 300: 1700 and 1233 mL.
describe('fluid on hemodialysis', () => {
  test('[CLT-10] from the ultrafiltration limit where limit, hours and dry weight are known', () => {
    const limit = { ultrafiltrationLimitMlPerKgH: 10 };
    const hours = { sessionHours: 4 };
    expect(targetOf('fluid', hemodialysis({ ...limit, ...hours })).others).toEqual(['0-1700', '0-1233']);
    for (const more of [hemodialysis(limit), hemodialysis(hours), hemodialysis()]) expect(targetOf('fluid', more).others).toEqual([]);
    const unweighed = { ...hemodialysis({ ...limit, ...hours }), weighings: [weighing('actual', 70)] };
    expect(targetOf('fluid', unweighed).others).toEqual([]);
    // No team agrees to more than 20 mL/kg/h: no figure is made of it.
    expect(targetOf('fluid', hemodialysis({ ...hours, ultrafiltrationLimitMlPerKgH: 25 })).others).toEqual([]);
  });

  test('[CLT-10] little urine is what the limit is made of; what asks the team is told before it is signed', () => {
    const plain = targetOf('fluid', hemodialysis());
    expect(plain).toMatchObject({ kind: 'proposed', range: { lo: 800, hi: 1300 } });
    expect(plain.words).not.toContain('ask the kidney team');
    expect(plain.words).not.toContain('often freer');
    const failing = targetOf('fluid', { ...hemodialysis(), conditions: ['heart-failure'], symptoms: ['swelling'] });
    expect(failing.words).toMatch(/Swelling or breathlessness\. Heart failure: ask the kidney team before this is signed\.$/);
  });

  // Own decision: 6 hours and more, or 5 sessions and more.
  test.each([
    [{ sessionHours: 6 }, true],
    [{ sessionHours: 5.5 }, false],
    [{ sessionsPerWeek: 5 }, true],
    [{ sessionsPerWeek: 4 }, false],
  ])('[CLT-10] %o is frequent or long: %s', (schedule, isLong) => {
    expect(targetOf('fluid', hemodialysis(schedule)).words.includes('With frequent or long sessions')).toBe(isLong);
  });

  test('[CLT-10] without a urine volume in date it is withheld, and says why', () => {
    const { urineMlPerDay: _, ...unknown } = hemodialysis();
    expect(targetOf('fluid', unknown)).toMatchObject({ kind: 'withheld', words: 'A day’s urine is not known.' });
    expect(targetOf('fluid', { ...hemodialysis(), ...urine(300, addDays(today, -100)) }).kind).toBe('proposed');
    expect(targetOf('fluid', { ...hemodialysis(), ...urine(300, '2026-03-06') })).toMatchObject({
      kind: 'withheld',
      words: 'Urine on 2026-03-06, 101 days old is too old.',
    });
    expect(targetOf('fluid', { ...unknown, conditions: ['calcium-oxalate-stones'] }).others).toEqual(['no figure']);
  });
});

describe('sodium (facts 3.3)', () => {
  const conservative = (conditions: readonly Condition[], symptoms: readonly Symptom[] = []) =>
    targetOf('sodium', { treatment: { setting: 'ckd-not-on-dialysis', conservative: true }, conditions, symptoms }).kind;

  test('[CLT-10] conservative care restricts with a reason alone (facts 1.3)', () => {
    expect(conservative([])).toBe('no-limit');
    expect(conservative(['frail'], ['vomiting'])).toBe('no-limit');
    for (const condition of ['edema', 'ascites', 'overload', 'hypertension', 'heart-failure', 'nephrotic-syndrome'] as const)
      expect(conservative([condition]), condition).toBe('proposed');
    expect(conservative([], ['swelling'])).toBe('proposed');
    expect(conservative([], ['vomiting', 'breathlessness'])).toBe('proposed');
    expect(targetOf('sodium', { conditions: [] }).kind).toBe('proposed');
  });

  test('[CLT-10] the grades of KDOQI 2020, and what low pressure asks', () => {
    const grades = (more: Partial<Assessment>) => targetOf('sodium', more).sources.map(({ grade }) => grade);
    expect(grades({})).toEqual(['1B, blood pressure and volume', '2A, proteinuria']);
    expect(grades(hemodialysis())).toEqual(['1C']);
    expect(targetOf('sodium', {}).words).not.toContain('may need more salt');
    expect(targetOf('sodium', { conditions: ['calcium-oxalate-stones'] }).alternatives.at(-1)).toMatchObject({
      range: { lo: 0, hi: 2300 },
      sources: [{ text: 'AUA 2014', secondHand: true }],
    });
  });
});
