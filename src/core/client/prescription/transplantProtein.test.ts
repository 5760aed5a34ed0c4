import { describe, expect, it } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from './proposePrescription.ts';

/** Four years with a working graft: the age at which 0.8 g/kg is what the source proposes (facts 3.2). */
function proteinOf(more: Partial<Assessment>) {
  const proposal = proposePrescription(clientWith({ treatment: { setting: 'transplant', transplantedOn: '2022-03-01' }, ...more }), today);
  if (proposal.kind === 'barred') throw new Error('barred');
  return proposal.targets.protein;
}

// 0.8 g/kg is less than most people eat. Proposed to someone who is losing flesh it takes away what keeps muscle and graft healing.
describe('protein of a stable transplant', () => {
  it('[CLT-13] is 0.8 g/kg without wasting', () => {
    expect(proteinOf({})).toMatchObject({ kind: 'proposed', range: { lo: 56, hi: 56 } });
  });

  it.each<[string, Partial<Assessment>, RegExp]>([
    [
      'three of four groups of wasting',
      {
        weightLoss: { percent3Months: 6 },
        muscleLoss: { percent3Months: 6 },
        intake: { proteinG: 30, energyKcal: 1200 },
      },
      /wasting/i,
    ],
    ['weight loss of 5 % in 3 months', { weightLoss: { percent3Months: 5 } }, /Weight loss/],
    ['poor appetite', { appetite: 'poor' }, /poor appetite/i],
    ['frail', { conditions: ['frail'] }, /Frail/],
  ])('[CLT-13] is withheld with %s, and says why', (_, more, why) => {
    const target = proteinOf(more);
    expect(target.kind).toBe('withheld');
    expect(JSON.stringify(target)).toMatch(why);
  });
});
