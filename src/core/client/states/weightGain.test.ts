import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { dryWeightAway, gainOverLine, weightGainToCall } from './weightGain.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis = { setting: 'hemodialysis', place: 'in-center' } as const;
const peritoneal = { setting: 'peritoneal-dialysis', method: 'capd' } as const;
const transplant = { setting: 'transplant', transplantedOn: '2024-01-01' } as const;

// Care rules 4: hemodialysis over 4.5 % of the dry weight; peritoneal dialysis, and heart failure or overload off dialysis, 2 kg in 2 days.
describe('the gain of weight for which a client calls', () => {
  const twoDays = '2 kg (4.4 lb) or more in 2 days';
  test.each<[string, Partial<Assessment>, string | undefined]>([
    [
      'hemodialysis',
      { treatment: hemodialysis, weighings: [weighing('dry', 70)] },
      'over 3.2 kg (6.9 lb) between two treatments, 4.5 % of the dry weight of 70.0 kg',
    ],
    ['hemodialysis without a dry weight', { treatment: hemodialysis, weighings: [] }, undefined],
    ['peritoneal dialysis', { treatment: peritoneal }, twoDays],
    ['heart failure off dialysis', { conditions: ['heart-failure'] }, twoDays],
    ['overload off dialysis', { conditions: ['overload'] }, twoDays],
    ['off dialysis', {}, undefined],
    ['a transplant with heart failure', { treatment: transplant, conditions: ['heart-failure'] }, undefined],
  ])('[CLT-31] %s', (_, more, words) => {
    expect(weightGainToCall(factsOf(more))?.words).toBe(words);
  });

  test('[CLT-31] in kg for the paper that is handed out', () => {
    expect(weightGainToCall(factsOf({ treatment: hemodialysis, weighings: [weighing('dry', 70)] }))?.kg).toBeCloseTo(3.15, 9);
    expect(weightGainToCall(factsOf({ treatment: peritoneal }))).toMatchObject({ kg: 2, within: '2-days' });
  });
});

describe('the newest gain between two treatments', () => {
  const gain = (before: number, ...more: Assessment['weighings']) =>
    gainOverLine(factsOf({ treatment: hemodialysis, weighings: [weighing('before-dialysis', before, '2026-06-12'), ...more] }));
  const dry = weighing('dry', 80, '2026-06-01');

  test('[CLT-31] 83.6 kg over dry 80 kg is 4.5 % and within, 83.7 kg is over', () => {
    expect(gain(83.6, dry)).toBeUndefined();
    expect(gain(83.7, dry)).toBe('gain 4.6 % (3.7 kg over dry 80.0 kg)');
    expect(gain(81, dry)).toBeUndefined();
    expect(gain(83.7)).toBeUndefined();
    expect(gainOverLine(factsOf({ treatment: hemodialysis, weighings: [dry] }))).toBeUndefined();
  });

  test('[CLT-31] a weight after a later session ends it, that of the same day does not', () => {
    expect(gain(85, dry, weighing('after-dialysis', 80, '2026-06-14'))).toBeUndefined();
    expect(gain(85, dry, weighing('after-dialysis', 80, '2026-06-12'))).toMatch(/^gain 6\.3 %/);
    expect(gain(85, dry, weighing('after-dialysis', 80, '2026-06-09'))).toMatch(/^gain 6\.3 %/);
  });
});

// Care rules 1: asked again when the newest weight after dialysis is 3 % or more away. 3 % of 70 kg is 2.1 kg.
describe('a dry weight that no longer fits', () => {
  const away = (kg: number, on = '2026-06-10', treatment: Assessment['treatment'] = hemodialysis) =>
    dryWeightAway(factsOf({ treatment, weighings: [weighing('dry', 70, '2026-06-05'), weighing('after-dialysis', kg, on)] }));

  test('[CLT-31] 3 % above or below it is asked, less is not', () => {
    expect(away(72.1)).toBe('72.1 kg after dialysis (on 2026-06-10, 5 days old) is 3.0 % from the dry weight of 70.0 kg');
    expect(away(67.9)).toMatch(/is 3\.0 %/);
    expect([away(72), away(68), away(70)]).toEqual([undefined, undefined, undefined]);
  });

  test('[CLT-31] by a weight of its day or later; on hemodialysis alone', () => {
    expect(away(75, '2026-06-05')).toMatch(/is 7\.1 %/);
    expect(away(75, '2026-06-04')).toBeUndefined();
    expect(away(75, '2026-06-10', peritoneal)).toBeUndefined();
    expect(dryWeightAway(factsOf({ treatment: hemodialysis, weighings: [weighing('dry', 70)] }))).toBeUndefined();
  });
});
