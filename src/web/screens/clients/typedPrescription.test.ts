import { describe, expect, test } from 'vitest';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import {
  decidedFigure,
  decisionFrom,
  fluidDecision,
  fluidSense,
  isOpenDecision,
  type SignedTarget,
  startingDecision,
  type Target,
} from './typedDecision.ts';
import { totalPercent, typedMeals } from './typedMeals.ts';
import { typedPrescription } from './typedPrescription.ts';

const sodium: Target = {
  item: 'sodium',
  title: 'Sodium',
  unit: 'mg',
  kind: 'proposed',
  figure: 'under 2300 mg a day',
  inShort: 'under 2300 mg',
  line: { basis: 'one figure for all', why: 'blood pressure', source: 'KDOQI 2020' },
  range: [0, 2300],
  limit: 'at-most',
  says: 'KDOQI 2020: under 2.3 g',
  reasons: [],
  toCheck: [],
  sources: [],
  needsChoice: false,
  toBeConfirmed: false,
  alternatives: [],
};
const client = { assessmentId: 'first', targets: [sodium], prescriptions: [] };
const signed: SignedTarget = {
  item: 'sodium',
  title: 'Sodium',
  kind: 'bounded',
  from: 'own',
  figure: 'at most 1900 mg a day',
  inShort: 'at most 1900 mg',
  range: [0, 1900],
  limit: 'at-most',
  says: 'set by the dietitian',
  reason: 'edema',
};

describe('what is decided of a proposal', () => {
  test('it begins with the proposal, or with what was decided before', () => {
    expect(typedPrescription(client).decisions.sodium).toMatchObject({ from: 'proposal', hi: '2300' });
    const before = { id: 'one', stands: true, signedBy: 'A. Dietitian', signedAt: '2026-05-01', targets: [signed] };
    expect(typedPrescription({ ...client, prescriptions: [before] }).decisions.sodium).toMatchObject({
      from: 'own',
      hi: '1900',
      reason: 'edema',
      isAsSigned: true,
    });
  });

  test('[CLT-75] what was signed as proposed and is proposed otherwise stays as signed, and wants a reason or the newer proposal', () => {
    const before = { ...signed, from: 'proposal' as const, says: 'KDOQI 2020: under 2.3 g' };
    const differs = { ...sodium, differsSinceSigned: true };
    const stays = startingDecision(differs, before);
    expect(stays).toMatchObject({ from: 'own', hi: '1900', says: 'kept as it was signed before', reason: 'edema', isAsSigned: true });
    expect(isOpenDecision({ ...stays, reason: ' ' })).toBe(true);
    expect(decidedFigure(stays, differs, before)).toBe('at most 1900 mg');
    const taken = decisionFrom('proposal', differs, stays, before);
    expect(taken).toMatchObject({ from: 'proposal', hi: '2300', isAsSigned: false });
    expect(isOpenDecision(taken)).toBe(false);
    expect(decidedFigure(taken, differs, before)).toBe('under 2300 mg');
    expect(decisionFrom('as-signed', differs, taken, before)).toEqual(stays);
    // Nothing differs: as proposed it was, and as proposed it is signed again.
    expect(startingDecision({ ...sodium, differsSinceSigned: false }, before)).toMatchObject({ from: 'proposal', isAsSigned: true });
  });

  test('[CLT-53] a limit of fluid that is meant as a need is a decision of one’s own', () => {
    const fluid: Target = { ...sodium, item: 'fluid', unit: 'mL', range: [700, 1200], limit: 'within' };
    const picked = fluidDecision(startingDecision(fluid, undefined), 'at-most', '1000');
    expect(fluidSense(picked, 'at-least', fluid)).toMatchObject({ from: 'own', limit: 'at-least', lo: '1000' });
    expect(fluidSense(picked, 'at-most', fluid)).toMatchObject({ from: 'proposal', hi: '1000' });
  });

  test('[CLT-75] what a record of form 1 does not tell cannot stay: the proposal stands there', () => {
    const { range: _range, limit: _limit, ...untold } = signed;
    expect(startingDecision(sodium, { ...untold, kind: 'not-told' })).toMatchObject({ from: 'proposal', isAsSigned: false });
  });

  test('[CLT-75] another guideline’s figure stays with its words while that guideline says the same, else as an own decision', () => {
    const other = {
      says: 'KDIGO 2024: under 2 g',
      sources: [],
      toBeConfirmed: false,
      range: [0, 2000] as [number, number],
      limit: 'below' as const,
    };
    const before: SignedTarget = { ...signed, from: 'alternative', says: other.says, range: [0, 2000], limit: 'below' };
    const beside = (range: [number, number]) => ({ ...sodium, differsSinceSigned: false, alternatives: [{ ...other, range }] });
    expect(startingDecision(beside([0, 2000]), before)).toMatchObject({ from: 'alternative', says: other.says, hi: '2000' });
    expect(startingDecision(beside([0, 1800]), before)).toMatchObject({ from: 'own', hi: '2000', reason: 'edema' });
  });

  test('[WEB-4] what was typed for one proposal fits no other: another assessment, another figure', () => {
    const kept = JSON.parse(JSON.stringify({ ...typedPrescription(client), by: 'A. Dietitian' }));
    expect(isSameShape(typedPrescription(client), kept)).toBe(true);
    expect(isSameShape(typedPrescription({ ...client, assessmentId: 'second' }), kept)).toBe(false);
    const otherwise = { ...sodium, figure: 'under 2000 mg a day' };
    expect(isSameShape(typedPrescription({ ...client, targets: [otherwise] }), kept)).toBe(false);
  });
});

test('the parts of a day are added as they are typed; what is empty is no part', () => {
  const { meals } = typedMeals([
    { name: 'breakfast', percent: 40 },
    { name: 'supper', percent: 60 },
  ]);
  expect(totalPercent({ meals })).toBe(100);
  expect(totalPercent({ meals: meals.with(1, { name: 'supper', percent: '' }) })).toBe(40);
});
