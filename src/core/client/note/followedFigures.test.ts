import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { followedFigures } from './followedFigures.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis: Partial<Assessment> = { treatment: { setting: 'hemodialysis', place: 'in-center' } };

function followed(what: string, now: Partial<Assessment>, then?: Partial<Assessment>, targets: readonly DecidedTarget[] = []) {
  const one = followedFigures(factsOf(now), then && factsOf(then), targets).find(figure => figure.what === what);
  return one === undefined ? undefined : [one.outcome, one.because];
}

// Care facts 4.2: on hemodialysis potassium 4.6 to 5.3, before the session; albumin 4.0 or more; bicarbonate 22 or more.
describe('figures that are followed', () => {
  const potassium = (value: number, on = '2026-06-05', more = {}) => ({
    ...hemodialysis,
    labs: [lab('potassium', value, 'mmol/L', on, more)],
  });
  const words = (value: number) =>
    `potassium ${value} mmol/L (on 2026-06-05, 10 days old), goal 4.6 to 5.3 mmol/L (CJASN 2007;2:999 (observational))`;

  test('[NOTE-21] met within the band, its ends with it; not met outside; partly where it came nearer', () => {
    expect(followed('potassium', potassium(5.3))).toEqual(['met', words(5.3)]);
    expect(followed('potassium', potassium(4.6))?.[0]).toBe('met');
    expect(followed('potassium', potassium(5.4))).toEqual(['not met', words(5.4)]);
    expect(followed('potassium', potassium(5.4), potassium(5.8, '2026-05-05'))).toEqual([
      'partly met',
      `${words(5.4)}; before 5.8 mmol/L on 2026-05-05`,
    ]);
    expect(followed('potassium', potassium(5.8), potassium(5.4, '2026-05-05'))?.[0]).toBe('not met');
    // As far away on the other side: 4.5 is 0.1 under, 5.4 was 0.1 over.
    expect(followed('potassium', potassium(4.5), potassium(5.4, '2026-05-05'))?.[0]).toBe('not met');
  });

  test('[NOTE-21] a hemolyzed, an old or no result is not known yet, and nothing to compare with', () => {
    expect(followed('potassium', hemodialysis)?.[0]).toBe('not known yet');
    expect(followed('potassium', potassium(5, '2026-06-05', { hemolyzed: true }))).toEqual([
      'not known yet',
      'potassium 5 mmol/L (on 2026-06-05, 10 days old, hemolyzed) does not count as in range nor as low',
    ]);
    // Care rules 1: on hemodialysis potassium counts for 45 days; 2026-04-30 is 46 days ago.
    expect(followed('potassium', potassium(5, '2026-04-30'))?.[0]).toBe('not known yet');
    expect(followed('potassium', potassium(5.4), potassium(5.8, '2026-05-05', { hemolyzed: true }))?.[0]).toBe('not met');
    expect(followed('albumin', hemodialysis)).toEqual(['not known yet', 'no result in date on record']);
    expect(followed('HbA1c', hemodialysis)).toBeUndefined();
  });

  test('[NOTE-21] where sources differ the second band is partly met; another unit is told in both', () => {
    const phosphate = (value: number, unit: string) => followed('phosphate', { ...hemodialysis, labs: [lab('phosphate', value, unit)] });
    expect(phosphate(4.5, 'mg/dL')?.[0]).toBe('met');
    expect(phosphate(5.5, 'mg/dL')?.[0]).toBe('partly met');
    expect(phosphate(5.6, 'mg/dL')?.[0]).toBe('not met');
    // 2.1 mmol/L × 3.097 = 6.5 mg/dL.
    expect(phosphate(2.1, 'mmol/L')?.[1]).toContain(
      'phosphate 2.1 mmol/L (on 2026-06-05, 10 days old), which is 6.5 mg/dL, goal 2.5 to 4.5 mg/dL',
    );
  });

  test('[NOTE-21] PTH is judged by the laboratory’s own upper end alone: 2 × 65 to 9 × 65', () => {
    const pth = (more: object) => followed('PTH, intact', { ...hemodialysis, labs: [lab('pth', 420, 'pg/mL', '2026-06-05', more)] });
    expect(pth({ upperNormal: 65 })).toEqual([
      'met',
      'PTH, intact 420 pg/mL (on 2026-06-05, 10 days old), goal 130 to 585 pg/mL (KDIGO CKD-MBD 2017)',
    ]);
    expect(pth({})?.[0]).toBe('not known yet');
  });

  test('[NOTE-21] off dialysis potassium has no band: the laboratory’s range decides', () => {
    const of = (...values: readonly [number, string][]) =>
      followed('potassium', { labs: values.map(([value, on]) => lab('potassium', value, 'mmol/L', on)) });
    expect(of([5, '2026-06-05'])).toEqual(['met', 'potassium 5 mmol/L (on 2026-06-05, 10 days old), upper end 5 mmol/L']);
    expect(of([5.2, '2026-06-05'])?.[0]).toBe('partly met');
    expect(of([5.2, '2026-06-05'], [5.3, '2026-05-05'])?.[0]).toBe('not met');
    expect(of([3.4, '2026-06-05'])).toEqual(['not met', 'potassium 3.4 mmol/L (on 2026-06-05, 10 days old), below range']);
    expect(of()?.[0]).toBe('not known yet');
  });

  // 4.5 % of 72 kg is 3.24 kg.
  test('[NOTE-21] the gain between treatments against the line, on hemodialysis alone', () => {
    const gain = (before: number, on = '2026-06-12', more: Assessment['weighings'] = []) => ({
      ...hemodialysis,
      weighings: [weighing('dry', 72), weighing('before-dialysis', before, on), ...more],
    });
    const what = 'weight gain between treatments';
    expect(followed(what, gain(75.2))).toEqual(['met', '3.2 kg, 4.4 % of dry 72.0 kg on 2026-06-12, goal 4.5 % or less']);
    expect(followed(what, gain(75.6))).toEqual(['not met', '3.6 kg, 5.0 % of dry 72.0 kg on 2026-06-12, goal 4.5 % or less']);
    expect(followed(what, gain(75.6), gain(76, '2026-06-08'))).toEqual([
      'partly met',
      '3.6 kg, 5.0 % of dry 72.0 kg on 2026-06-12, goal 4.5 % or less; before 4.0 kg, 5.6 % of dry 72.0 kg on 2026-06-08',
    ]);
    expect(followed(what, gain(71))?.[0]).toBe('met');
    expect(followed(what, gain(75.6, '2026-06-12', [weighing('after-dialysis', 72, '2026-06-13')]))?.[0]).toBe('not known yet');
    expect(followed(what, {})).toBeUndefined();
  });

  test('[NOTE-21] what is eaten against the signed figure, where it was told in date', () => {
    const protein: DecidedTarget = { item: 'protein', unit: 'g', kind: 'bounded', range: { lo: 72, hi: 86 }, from: 'own', says: '' };
    const eaten = (proteinG: number, then?: number) =>
      followed(
        'protein eaten',
        { intake: { proteinG } },
        then === undefined ? undefined : { on: '2026-03-01', intake: { proteinG: then } },
        [protein],
      );
    expect(eaten(72)).toEqual(['met', '72 g a day, as told on 2026-06-15, target 72 – 86 g']);
    expect(eaten(60)?.[0]).toBe('not met');
    expect(eaten(60, 50)).toEqual(['partly met', '60 g a day, as told on 2026-06-15, target 72 – 86 g; before 50 g on 2026-03-01']);
    expect(followed('protein eaten', {}, undefined, [protein])).toEqual(['not known yet', 'nothing told on record']);
    const long = { on: '2026-01-01', intake: { proteinG: 72 } };
    expect(followed('protein eaten', long, undefined, [protein])).toEqual(['not known yet', 'what was told is too old']);
    expect(followed('energy eaten', { intake: { energyKcal: 1800 } }, undefined, [protein])).toBeUndefined();
  });

  test('[NOTE-21] what is taken beside meals counts, and while nobody said whether it was told with them both ends must agree', () => {
    const protein: DecidedTarget = { item: 'protein', unit: 'g', kind: 'bounded', range: { lo: 70, hi: 84 }, from: 'own', says: '' };
    const drink = { food: 'oral-supplement', proteinG: 30, daysPerWeek: 7 } as const;
    const eaten = (holdsAdded?: boolean) =>
      followed(
        'protein eaten',
        { intake: { proteinG: 50, ...(holdsAdded === undefined ? {} : { holdsAdded }) }, addedFoods: [drink] },
        undefined,
        [protein],
      )?.[0];
    // 50 g and 30 g beside it are 80 g.
    expect([eaten(false), eaten(true), eaten()]).toEqual(['met', 'not met', 'not known yet']);
  });

  test('[NOTE-21] the gain of the newest treatment counts before an older weight: 4.2 kg over 70 kg is 6 %, over the line of 4.5 %', () => {
    const treatment = { setting: 'hemodialysis', place: 'in-center', sessions: [{ on: '2026-06-12', gainKg: 4.2 }] } as const;
    const weighings = [weighing('dry', 70, '2026-06-10'), weighing('before-dialysis', 72, '2026-06-05')];
    expect(followed('weight gain between treatments', { treatment, weighings })).toEqual([
      'not met',
      '4.2 kg, 6.0 % of dry 70.0 kg on 2026-06-12, goal 4.5 % or less',
    ]);
  });
});
