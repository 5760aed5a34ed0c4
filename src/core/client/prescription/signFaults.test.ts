import { describe, expect, test } from 'vitest';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { proposePrescription } from './proposePrescription.ts';
import { changesFromSigned, missingToSign, withSigned } from './signPrescription.ts';

const record = recordOf(hemodialysisClient);
const [signed] = record.prescriptions;
const { targets } = signed!;
const open = Number.POSITIVE_INFINITY;
const proposal = proposePrescription(hemodialysisClient, today);
if (proposal.kind === 'barred') throw new Error('the fixture has a proposal');

const targetOf = (item: DecidedTarget['item']) => targets.find(one => one.item === item)!;
const withTarget = (target: DecidedTarget) => targets.map(one => (one.item === target.item ? target : one));
const faults = (all: readonly DecidedTarget[], by = 'A. Dietitian') => missingToSign(all, by, proposal.targets);
const own = (more: Omit<DecidedTarget, 'from' | 'says' | 'unit'>): readonly string[] =>
  faults(withTarget({ from: 'own', reason: 'a wound that heals', says: 'own', unit: more.item === 'fluid' ? 'mL' : 'g', ...more }));
const asProposed = (item: DecidedTarget['item'], more: Partial<DecidedTarget>): readonly string[] =>
  faults(withTarget({ ...targetOf(item), ...more }));

describe('what is missing to sign, in words', () => {
  test('[CLT-51] a name, and one decision on each item', () => {
    expect(faults(targets)).toEqual([]);
    expect(faults(targets, '  ')).toEqual(['the name of who signs']);
    expect(faults(targets.filter(({ item }) => item !== 'sodium'))).toEqual(['a decision on sodium']);
    expect(faults([...targets, targetOf('sodium')])).toEqual(['one decision on sodium, not 2']);
    expect(faults(targets.filter(({ item }) => item !== 'phosphateAdditives'))).toEqual(['a decision on phosphate additives']);
  });

  test('[CLT-52] a figure or a word, and not both', () => {
    const range = { lo: 60, hi: 80 };
    expect(own({ item: 'protein', kind: 'bounded' })).toEqual([
      'a protein figure, or the word that there is no limit or that it is withheld',
    ]);
    expect(own({ item: 'protein' })).toHaveLength(1);
    expect([own({ item: 'protein', kind: 'no-limit' }), own({ item: 'protein', kind: 'withheld' })]).toEqual([[], []]);
    for (const kind of ['no-limit', 'withheld'] as const)
      expect(own({ item: 'protein', kind, range })).toEqual(['one of the two for protein: a figure, or none']);
    const { range: _, ...unbounded } = targetOf('protein');
    const alternative = { ...unbounded, kind: 'no-limit', from: 'alternative', reason: 'a wound' } as const;
    expect(faults(withTarget(alternative))).toEqual(['the protein figure of the guideline that was chosen']);
  });

  test('[CLT-52] a figure under a million that agrees with how it is meant', () => {
    const bounded = (lo: number, hi: number, limit: DecidedTarget['limit'] & string) =>
      own({ item: 'protein', kind: 'bounded', range: { lo, hi }, limit });
    expect(bounded(1_000_000, open, 'at-least')).toEqual([
      'protein figures from 0 to under a million; leave the upper end empty where there is none',
    ]);
    expect([bounded(999_999, open, 'at-least'), bounded(0, 999_999, 'at-most'), bounded(0, 1, 'below')]).toEqual([[], [], []]);
    expect(bounded(0, 0, 'below')).toEqual(['a protein figure that agrees with how it is meant (under)']);
    expect(bounded(10, 80, 'below')).toHaveLength(1);
    expect([bounded(80, 80, 'at-most'), bounded(80, 80, 'at-least'), bounded(60, 80, 'within')]).toEqual([[], [], []]);
  });
});

// Sodium is proposed as under 2300 mg, protein as 72 to 86.4 g, fluid as 800 to 1300 mL, potassium is withheld.
describe('what claims to be as proposed', () => {
  const isNot = (item: string) => [`a reason for the ${item} target, and it marked as your own: it is not as proposed`];

  test('[CLT-51] has its sense and both its ends', () => {
    expect(asProposed('sodium', { range: { lo: 0, hi: 2000 } })).toEqual(isNot('sodium'));
    expect(asProposed('sodium', { limit: 'at-most' })).toEqual(isNot('sodium'));
    const { lo, hi } = targetOf('protein').range!;
    expect(asProposed('protein', { range: { lo: lo - 10, hi } })).toEqual(isNot('protein'));
    expect(asProposed('protein', { range: { lo, hi: hi + 10 } })).toEqual(isNot('protein'));
  });

  test('[CLT-51] is not without limit where a figure was proposed, nor a figure where none was', () => {
    const { range: _, limit: __, ...sodium } = targetOf('sodium');
    expect(faults(withTarget({ ...sodium, kind: 'no-limit' }))).toEqual(isNot('sodium'));
    expect(asProposed('potassium', { kind: 'bounded', range: { lo: 0, hi: 2000 }, limit: 'at-most' })).toEqual(isNot('potassium'));
  });

  test('[CLT-53] one figure of fluid lies within what was proposed', () => {
    const fluid = (lo: number, hi: number, limit: 'at-least' | 'at-most') => asProposed('fluid', { range: { lo, hi }, limit });
    expect([fluid(0, 800, 'at-most'), fluid(0, 1300, 'at-most')]).toEqual([[], []]);
    expect([fluid(0, 799, 'at-most'), fluid(800, open, 'at-least')]).toEqual([isNot('fluid'), isNot('fluid')]);
    expect(fluid(0, 1301, 'at-most')).toEqual(isNot('fluid'));
  });

  test('[CLT-53] a need of fluid is not signed as a limit', () => {
    const early = proposePrescription(clientWith({ treatment: { setting: 'transplant', transplantedOn: '2026-06-01' } }), today);
    if (early.kind === 'barred') throw new Error('barred');
    const fluid = (limit: 'at-least' | 'at-most') => {
      const range = limit === 'at-least' ? { lo: 2500, hi: open } : { lo: 0, hi: 2500 };
      const decided: DecidedTarget = { item: 'fluid', unit: 'mL', kind: 'bounded', range, limit, from: 'proposal', says: '' };
      return missingToSign([decided], 'A. Dietitian', early.targets).filter(fault => fault.includes('not as proposed'));
    };
    expect([fluid('at-least'), fluid('at-most')]).toEqual([[], isNot('fluid')]);
  });
});

describe('what a new decision would leave out', () => {
  const protein: DecidedTarget = {
    item: 'protein',
    unit: 'g',
    kind: 'bounded',
    range: { lo: 60, hi: 80 },
    limit: 'within',
    from: 'own',
    reason: 'a wound',
    says: 'own',
  };
  const { range: _, limit: __, ...held } = { ...protein, kind: 'withheld' as const };
  const { kind: ___, ...heldOfForm1 } = held;
  const { limit: ____, ...withoutLimit } = protein;

  test.each<[string, DecidedTarget, DecidedTarget, isLost: boolean]>([
    ['the same', protein, { ...protein, from: 'proposal' }, false],
    ['within is what no word says', protein, withoutLimit, false],
    ['another low end', protein, { ...protein, range: { lo: 70, hi: 80 } }, true],
    ['another high end', protein, { ...protein, range: { lo: 60, hi: 90 } }, true],
    ['another sense', protein, { ...protein, limit: 'at-most' }, true],
    ['no figure now', protein, held, true],
    ['a figure now', held, protein, true],
    ['withheld twice', held, held, false],
    ['withheld, then no limit', held, { ...held, kind: 'no-limit' }, true],
    ['no figure in form 1, which does not tell which', heldOfForm1, held, false],
    ['taken over as proposed then', { ...protein, from: 'proposal' }, held, false],
  ])('[CLT-54] %s', (_name, before, now, isLost) => {
    expect(changesFromSigned([before], [now])).toEqual(isLost ? [{ item: 'protein', before, now }] : []);
  });

  test('[CLT-54] each signed one takes the place of the one before it', () => {
    expect(signed).not.toHaveProperty('supersedes');
    const next = withSigned(record, { ...signed!, id: 'prescription-2' });
    expect(next.prescriptions.map(({ id, supersedes }) => [id, supersedes])).toEqual([
      ['prescription-2', 'prescription-1'],
      ['prescription-1', undefined],
    ]);
  });
});
