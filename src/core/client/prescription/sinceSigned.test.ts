import { describe, expect, test } from 'vitest';
import type { DecidedTarget } from '#core/client/record/decidedTarget.ts';
import { interval } from '#core/quantity/interval.ts';
import { differsSinceSigned } from './sinceSigned.ts';
import { noLimit, position, proposed, withheld } from './target.ts';

const sodium = (most: number) =>
  proposed('sodium', 'in short', { ...position('says', [], { limit: 'below' }), range: interval(0, most) }, []);
const signed: DecidedTarget = {
  item: 'sodium',
  unit: 'mg',
  kind: 'bounded',
  range: interval(0, 2300),
  limit: 'below',
  from: 'proposal',
  says: '',
};

describe('what would differ since the signature', () => {
  test('[CLT-72] a line signed as proposed is held against today’s figure, its sense and its kind', () => {
    expect(differsSinceSigned(signed, sodium(2300))).toBe(false);
    expect(differsSinceSigned(signed, sodium(2000))).toBe(true);
    expect(differsSinceSigned({ ...signed, limit: 'at-most' }, sodium(2300))).toBe(true);
    expect(differsSinceSigned(signed, noLimit('sodium', 'in short', [], []))).toBe(true);
    const held: DecidedTarget = { item: 'potassium', unit: 'mg', kind: 'withheld', from: 'proposal', says: '' };
    expect(differsSinceSigned(held, withheld('potassium', 'in short', '', [], []))).toBe(false);
    expect(differsSinceSigned(held, noLimit('potassium', 'in short', [], []))).toBe(true);
    // Form 1 does not tell which it was.
    const { kind: _kind, ...untold } = held;
    expect(differsSinceSigned(untold, withheld('potassium', 'in short', '', [], []))).toBe(true);
  });

  test('[CLT-72] an own figure is held against what was proposed beside it; where that is not known it counts as otherwise', () => {
    const own: DecidedTarget = { ...signed, range: interval(0, 1900), from: 'own', reason: 'edema' };
    expect(differsSinceSigned(own, sodium(2300))).toBe(true);
    const beside = { ...own, proposedThen: { kind: 'bounded', range: interval(0, 2300), limit: 'below' } } as const;
    expect(differsSinceSigned(beside, sodium(2300))).toBe(false);
    expect(differsSinceSigned(beside, sodium(2000))).toBe(true);
    expect(differsSinceSigned(beside, noLimit('sodium', 'in short', [], []))).toBe(true);
    // An own "no limit" for potassium does not hide that it is withheld today.
    const free: DecidedTarget = {
      item: 'potassium',
      unit: 'mg',
      kind: 'no-limit',
      from: 'own',
      says: '',
      reason: 'team',
      proposedThen: { kind: 'no-limit' },
    };
    expect(differsSinceSigned(free, noLimit('potassium', 'in short', [], []))).toBe(false);
    expect(differsSinceSigned(free, withheld('potassium', 'in short', '', [], []))).toBe(true);
  });

  test('[CLT-72] the same figure, or none, for another reason counts: no result then, 6.3 now', () => {
    const held: DecidedTarget = {
      item: 'potassium',
      unit: 'mg',
      kind: 'withheld',
      from: 'proposal',
      says: '',
      line: { why: 'no result that counts', source: 'own rule' },
    };
    expect(differsSinceSigned(held, withheld('potassium', 'no result that counts', '', [], []))).toBe(false);
    expect(differsSinceSigned(held, withheld('potassium', 'other causes come before food', '', [], []))).toBe(true);
    const own: DecidedTarget = { ...held, kind: 'no-limit', from: 'own', reason: 'team', proposedThen: { kind: 'withheld' } };
    expect(differsSinceSigned(own, withheld('potassium', 'other causes come before food', '', [], []))).toBe(true);
  });

  test('[CLT-72] one figure of fluid within the proposed range is as proposed; the range that stood beside an own figure likewise', () => {
    const fluid = (lo: number, hi: number) =>
      proposed('fluid', 'in short', { ...position('says', [], { limit: 'within' }), range: interval(lo, hi) }, []);
    const picked: DecidedTarget = {
      item: 'fluid',
      unit: 'mL',
      kind: 'bounded',
      range: interval(0, 1000),
      limit: 'at-most',
      from: 'proposal',
      says: '',
    };
    expect(differsSinceSigned(picked, fluid(700, 1200))).toBe(false);
    expect(differsSinceSigned(picked, fluid(500, 900))).toBe(true);
    // A limit is never as proposed where it was signed as a need.
    expect(differsSinceSigned({ ...picked, range: { lo: 1000, hi: Number.POSITIVE_INFINITY }, limit: 'at-least' }, fluid(700, 1200))).toBe(
      true,
    );
    const own: DecidedTarget = {
      ...picked,
      range: interval(0, 600),
      from: 'own',
      reason: 'team',
      proposedThen: { kind: 'bounded', range: interval(700, 1200), limit: 'within' },
    };
    expect(differsSinceSigned(own, fluid(700, 1200))).toBe(false);
    expect(differsSinceSigned(own, fluid(500, 1000))).toBe(true);
  });
});
