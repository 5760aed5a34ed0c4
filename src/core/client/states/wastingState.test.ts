import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { wastingState } from './wastingState.ts';

const albumin = (gPerDl: number, on = '2026-06-05') => lab('albumin', gPerDl, 'g/dL', on);
/** Nothing is met and nothing is open: 70 kg at 165 cm, BMI 25.7. */
const well: Partial<Assessment> = {
  labs: [albumin(4.2)],
  muscleLoss: { percent3Months: 0 },
  intake: { energyKcal: 2100, proteinG: 80 },
};
const stateOf = (more: Partial<Assessment>) => wastingState(checkAssessment(clientWith({ ...well, ...more }), today).facts);
const blocksOf = (more: Partial<Assessment>) => stateOf(more).blocks.map(({ why, whatToCheck }) => [why, whatToCheck]);
const groupsOf = (more: Partial<Assessment>) => stateOf(more).criteria.groups;
const without = (...keys: readonly ('muscleLoss' | 'intake')[]): Partial<Assessment> =>
  Object.fromEntries(keys.map(key => [key, undefined]));
const hemodialysis = { setting: 'hemodialysis', place: 'in-center' } as const;
const longAgo = '2025-10-01';

// Care rules 3: met and open together three or more, with at least one met, is not ruled out; so is BMI under 18.5 alone.
describe('wasting, and not ruled out', () => {
  test('[CLT-13] a client of whom everything is known and well is held back from nothing', () => {
    expect(blocksOf({})).toEqual([]);
    expect(groupsOf({})).toEqual({ blood: 'not met', 'body mass': 'not met', muscle: 'not met', intake: 'not met' });
  });

  test('[CLT-13] three groups met is wasting, told by what shows it', () => {
    expect(blocksOf({ labs: [albumin(3.1)], weighings: [weighing('actual', 60)], muscleLoss: { percent3Months: 6 } })).toEqual([
      [
        'Protein-energy wasting: 3 of 4 groups are met (albumin 3.1 g/dL, BMI 22 kg/m², muscle lost in 3 months 6%). No food is restricted until that is corrected.',
        'Raise intake first; review when it is corrected.',
      ],
    ]);
  });

  test('[CLT-13] one met and two open is not ruled out, with what would settle it; one met and one open, or none met, is', () => {
    const open = without('muscleLoss', 'intake');
    expect(blocksOf({ labs: [albumin(3.4)], ...open })).toEqual([
      [
        'Wasting is not ruled out: 1 of 4 groups met (albumin 3.4 g/dL), 2 open.',
        'To settle it: loss of muscle in 3 or 6 months; a day’s protein and energy eaten.',
      ],
    ]);
    expect(blocksOf({ labs: [albumin(3.4)], ...without('muscleLoss') })).toEqual([]);
    expect(blocksOf({ labs: [], ...open })).toEqual([]);
  });

  test('[CLT-13] what settles an open group: on dialysis prealbumin too; weight, height and the reason of a loss', () => {
    const open = { labs: [], weighings: [weighing('actual', 60)], ...without('muscleLoss') };
    expect(blocksOf(open)[0]?.[1]).toBe('To settle it: albumin in date; loss of muscle in 3 or 6 months.');
    const dialyzed = { ...open, treatment: hemodialysis, weighings: [weighing('dry', 60)] };
    expect(blocksOf(dialyzed)[0]?.[1]).toBe('To settle it: albumin or prealbumin in date; loss of muscle in 3 or 6 months.');
    const { height: _, ...noHeight } = clientWith({ ...well, labs: [albumin(3.4)], muscleLoss: {} });
    expect(wastingState(checkAssessment(noHeight, today).facts).blocks[0]?.whatToCheck).toBe(
      'To settle it: weight and height, and whether a loss of weight was wanted or fluid; loss of muscle in 3 or 6 months.',
    );
  });

  test('[CLT-13] BMI under 18.5 alone is not ruled out; 74 kg at 200 cm is 18.5', () => {
    const tall = (kg: number) => blocksOf({ height: { value: 200, unit: 'cm' }, weighings: [weighing('actual', kg)] });
    expect(tall(73.6)).toEqual([['Wasting is not ruled out: BMI 18.4 is under 18.5.', 'Dietitian review of intake and muscle.']]);
    expect(tall(74)).toEqual([]);
  });

  test('[CLT-13] lost weight and a poor appetite hold back as well (facts 8)', () => {
    const lost = 'Weight loss: do not restrict further.';
    expect(blocksOf({ weightLoss: { percent3Months: 5 } })).toEqual([[lost, 'Ask whether the loss was wanted, or fluid.']]);
    expect(blocksOf({ weightLoss: { percent3Months: 5, cause: 'unintended' } })).toEqual([
      [lost, 'Dietitian review of intake; loosen limits first.'],
    ]);
    expect(blocksOf({ appetite: 'poor' })).toEqual([
      ['Poor appetite: do not restrict further.', 'Dietitian review of intake; loosen limits first.'],
    ]);
  });
});

describe('facts that are too old (care rules 1, 3: nothing gets stricter because a fact grows old)', () => {
  test('[CLT-70] an old low albumin keeps wasting from being ruled out, by the lowest of its newest day', () => {
    const open = without('muscleLoss', 'intake');
    const none =
      'Wasting is not ruled out: 0 of 4 groups met (albumin 3.4 g/dL: too old to count, and no newer figure says otherwise), 3 open.';
    expect(blocksOf({ labs: [albumin(3.4, longAgo)], ...open })[0]?.[0]).toBe(none);
    expect(blocksOf({ labs: [albumin(4, longAgo), albumin(3.4, longAgo)], ...open })[0]?.[0]).toBe(none);
    expect(blocksOf({ labs: [albumin(4, longAgo), albumin(3.4, '2025-09-01')], ...open })).toEqual([]);
    expect(blocksOf({ labs: [albumin(4.2), albumin(3.4, longAgo)], ...open })).toEqual([]);
    expect(blocksOf({ labs: [lab('hemoglobin', 10.5, 'g/dL', longAgo)], ...open })).toEqual([]);
  });

  test('[CLT-70] a group that an old fact met is open again, whatever its other facts say', () => {
    expect(groupsOf({ labs: [albumin(4.2), lab('cholesterol', 90, 'mg/dL', longAgo)] }).blood).toBe('not known');
    expect(groupsOf({ labs: [albumin(4.2), lab('cholesterol', 180, 'mg/dL', longAgo)] }).blood).toBe('not met');
  });

  test('[CLT-70] an old weight gives no BMI of now, and its last one still counts as a sign', () => {
    const aged = (kg: number, more: Partial<Assessment> = {}) => blocksOf({ weighings: [weighing('actual', kg, longAgo)], ...more });
    // 55 kg at 165 cm is BMI 20.2; what was eaten cannot be told per kg either.
    expect(aged(55, { labs: [], ...without('muscleLoss') })[0]?.[0]).toMatch(
      /^Wasting is not ruled out: 0 of 4 groups met \(BMI 20\.2.*: too old to count, and no newer figure says otherwise\), 4 open\.$/,
    );
    expect(aged(70, { labs: [], ...without('muscleLoss') })).toEqual([]);
    expect(aged(49)).toEqual([['Wasting is not ruled out: BMI 18.0 is under 18.5.', 'Dietitian review of intake and muscle.']]);
    const before = { treatment: hemodialysis, weighings: [weighing('before-dialysis', 49, longAgo)] };
    expect(blocksOf(before)).toEqual([]);
    const { height: _, ...noHeight } = clientWith({ ...well, weighings: [weighing('actual', 49, longAgo)] });
    expect(wastingState(checkAssessment(noHeight, today).facts).blocks).toEqual([]);
  });

  test('[CLT-70] intake per kg of an old weight is a sign of the last time, and none of now', () => {
    const little = { energyKcal: 1200, proteinG: 30 };
    const aged = { labs: [], weighings: [weighing('actual', 70, longAgo)], intake: little };
    expect(blocksOf(aged)[0]?.[0]).toMatch(
      /^Wasting is not ruled out: 0 of 4 groups met \(.*: too old to count, and no newer figure says otherwise\), 3 open\.$/,
    );
    expect(groupsOf(aged).intake).toBe('not known');
  });

  test('[CLT-70] what was told half a year ago of muscle, intake and loss is open', () => {
    const on = '2025-12-01';
    for (const muscleLoss of [{ percent3Months: 6 }, { percent6Months: 11 }]) {
      expect(groupsOf({ muscleLoss }).muscle).toBe('met');
      expect(groupsOf({ on, muscleLoss }).muscle).toBe('not known');
    }
    const intake = { energyKcal: 1200, proteinG: 30 };
    expect([groupsOf({ intake }).intake, groupsOf({ on, intake }).intake]).toEqual(['met', 'not known']);
    for (const loss of [{ percent3Months: 6 }, { percent6Months: 11 }]) {
      const weightLoss = { ...loss, cause: 'unintended' } as const;
      expect(groupsOf({ weightLoss })['body mass']).toBe('met');
      expect(groupsOf({ on, weightLoss })['body mass']).toBe('met'); // the weight is of now
      expect(groupsOf({ on, weightLoss, weighings: [weighing('actual', 70, on)] })['body mass']).toBe('not known');
    }
  });
});

describe('what each group looks at', () => {
  test('[CLT-13] a loss counts when it was not wanted, and is open until somebody asked', () => {
    const bodyMass = (weightLoss: NonNullable<Assessment['weightLoss']>) => groupsOf({ weightLoss })['body mass'];
    for (const loss of [{ percent3Months: 6 }, { percent6Months: 11 }]) {
      expect(bodyMass(loss)).toBe('not known');
      expect(bodyMass({ ...loss, cause: 'unintended' })).toBe('met');
      expect(bodyMass({ ...loss, cause: 'wanted' })).toBe('not met');
      expect(bodyMass({ ...loss, cause: 'fluid' })).toBe('not met');
    }
  });

  test('[CLT-13] intake takes both, energy and protein', () => {
    expect(groupsOf({ intake: { energyKcal: 2100 } }).intake).toBe('not known');
    expect(groupsOf({ intake: { proteinG: 80 } }).intake).toBe('not known');
  });

  // Facts 3.8, worked: 195 g of dextrose, 60 % absorbed on CAPD is 398 kcal, 40 % 265 kcal. 25 kcal/kg of 65 kg is 1625 kcal.
  test('[CLT-13] on peritoneal dialysis the energy of the dialysate is eaten too (care rules 3)', () => {
    const bag = (percent: number) => ({ liters: 2, percent, labeledAs: 'dextrose' }) as const;
    const bags = [bag(1.5), bag(1.5), bag(2.5), bag(4.25)];
    const intakeOf = (energyKcal: number, more: object = {}) =>
      groupsOf({
        treatment: { setting: 'peritoneal-dialysis', method: 'capd', ...more },
        weighings: [weighing('dry', 65)],
        intake: { energyKcal, proteinG: 80 },
      }).intake;
    expect(intakeOf(1300, { bags })).toBe('not met'); // 1698 kcal, 26.1 a kg
    expect(intakeOf(1300, { bags, absorbedShare: 0.4 })).toBe('met'); // 1565 kcal, 24.1 a kg
    expect(intakeOf(1200, { bags })).toBe('met'); // 1598 kcal, 24.6 a kg
    // Without the bags food alone is enough, or nobody knows.
    expect([intakeOf(1625), intakeOf(1624)]).toEqual(['not met', 'not known']);
    expect(intakeOf(1300, { bags: [{ ...bag(1.5), percent: 60 }] })).toBe('not known');
    expect(groupsOf({ weighings: [weighing('actual', 65)], intake: { energyKcal: 1625, proteinG: 80 } }).intake).toBe('not met');
    expect(groupsOf({ weighings: [weighing('actual', 65)], intake: { energyKcal: 1624, proteinG: 80 } }).intake).toBe('met');
  });
});
