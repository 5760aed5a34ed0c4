import { expect, test } from 'vitest';
import type { Session } from '#core/client/assessment/amountsTaken.ts';
import type { Assessment, Weighing } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { notUsed } from '#core/client/assessment/notUsed.ts';
import { cautionsFor } from '#core/client/cautions/cautions.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { fastRemoval, sessionsInDate } from './sessions.ts';
import { gainOverLine } from './weightGain.ts';

const dry = weighing('dry', 72, '2026-06-01');
const treatment = { setting: 'hemodialysis', place: 'in-center' } as const;
const clientOn = (sessions: readonly Session[], weighings: readonly Weighing[] = [dry], more: Partial<Assessment> = {}) =>
  clientWith({ treatment: { ...treatment, sessions }, weighings, ...more });
const factsOn = (...given: Parameters<typeof clientOn>) => checkAssessment(clientOn(...given), today).facts;

// Facts 5, check 39: 75.6 over dry 72.0 kg is 3.6 kg, 5.0 %. F10: 2800 mL in 4 h, 70 kg after: 10.0 mL/kg/h.
test('[CLT-84] gain and rate of a treatment, from what is typed or the weights of its day', () => {
  const [typed] = sessionsInDate(factsOn([{ on: '2026-06-12', gainKg: 3.6 }]));
  expect(typed?.gainPercent).toBeCloseTo(5, 9);
  const weights = [dry, weighing('before-dialysis', 75.6, '2026-06-12'), weighing('after-dialysis', 70, '2026-06-12')];
  const [weighed] = sessionsInDate(factsOn([{ on: '2026-06-12', removedL: 2.8, hours: 4 }], weights));
  expect(weighed?.gainKg).toBeCloseTo(3.6, 9);
  expect(weighed?.mlPerKgH).toBeCloseTo(10, 9);
});

test('[CLT-84] what is not known stays so: no dry weight no percent, no hours no rate, whatever is prescribed', () => {
  const [session] = sessionsInDate(
    factsOn([{ on: '2026-06-12', gainKg: 3.6, removedL: 3 }], [], {
      treatment: { ...treatment, sessionHours: 4, sessions: [{ on: '2026-06-12', gainKg: 3.6, removedL: 3 }] },
    }),
  );
  expect(session).toEqual({ on: '2026-06-12', gainKg: 3.6, removedL: 3 });
});

// Care rules 4: over 4.5 % of the dry weight; 72 kg: 3.24 kg.
test('[CLT-84] the newest gain over the line is told, with at how many treatments it was', () => {
  const gains = (...kg: readonly number[]) => factsOn(kg.map((gainKg, at) => ({ on: `2026-06-1${3 - at}`, gainKg })));
  expect(gainOverLine(gains(3.6, 3.5, 2, 3.3))).toBe('gain 5.0 % (3.6 kg) on 2026-06-13, over the line at 3 of 4 treatments');
  expect(gainOverLine(gains(3.24, 3.6))).toBeUndefined();
  expect(gainOverLine(gains(3.25))).toContain('at 1 of 1 treatments');
});

test('[CLT-84] the newer of a treatment and a weight before dialysis is told', () => {
  const weights = [dry, weighing('before-dialysis', 76, '2026-06-14')];
  expect(gainOverLine(factsOn([{ on: '2026-06-12', gainKg: 1 }], weights))).toBe('gain 5.6 % (4.0 kg over dry 72.0 kg)');
  expect(gainOverLine(factsOn([{ on: '2026-06-15', gainKg: 1 }], weights))).toBeUndefined();
});

// 3.5 L in 3.5 h, 72 kg: 13.9 mL/kg/h; 3.2 L in 3.5 h: 12.7.
test.each([
  [3.5, undefined, '13.9 mL/kg/h on 2026-06-12, over 13'],
  [3.2, undefined, undefined],
  [3.2, 10, '12.7 mL/kg/h on 2026-06-12, over the agreed 10'],
  [3.5, 15, '13.9 mL/kg/h on 2026-06-12, over 13'],
] as const)('[CLT-84] %d L in 3.5 h, agreed %s: %s', (removedL, ultrafiltrationLimitMlPerKgH, told) => {
  const sessions = [{ on: '2026-06-12', removedL, hours: 3.5 }];
  const limit = ultrafiltrationLimitMlPerKgH === undefined ? {} : { ultrafiltrationLimitMlPerKgH };
  const facts = factsOn([], [dry], { treatment: { ...treatment, sessions, ...limit } });
  expect(fastRemoval(facts)).toBe(told);
  expect(cautionsFor(facts).some(({ id }) => id === 'fluid-removal')).toBe(told !== undefined);
});

test('[CLT-84] a treatment too old is not used, and says so; the newest gain stands beside fluid', () => {
  const old = factsOn([{ on: '2026-05-31', gainKg: 3.6 }]);
  expect(sessionsInDate(old)).toEqual([]);
  expect(notUsed(old)).toContainEqual({ what: '1 dialysis treatment on record', why: 'gain and fluid count for 14 days' });
  const urineMlPerDay = { value: 300, on: '2026-06-01' };
  const proposal = proposePrescription(clientOn([{ on: '2026-06-12', gainKg: 3.6 }], [dry], { urineMlPerDay }), today);
  expect(JSON.stringify(proposal.kind === 'proposal' && proposal.targets.fluid)).toContain(
    'Gain before the treatment of 2026-06-12: 3.6 kg, 5.0 % of the dry weight.',
  );
});
