import { describe, expect, test } from 'vitest';
import { today } from '#core/client/assessment/clientFixture.ts';
import { clientRecordToJson, wholeClientRecord } from '#core/client/record/clientRecordJson.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { Fault } from '#core/errors.ts';
import { householdFluid } from './householdFluid.ts';
import { proposePrescription } from './proposePrescription.ts';
import { changesFromSigned, missingToSign } from './signPrescription.ts';
import { decidedWords } from './targetWords.ts';

const record = recordOf(hemodialysisClient);
const [prescription] = record.prescriptions;
const { targets } = prescription!;
const open = Number.POSITIVE_INFINITY;
const ownProtein: DecidedTarget = {
  item: 'protein',
  unit: 'g',
  kind: 'bounded',
  range: { lo: 98, hi: open },
  limit: 'at-least',
  from: 'own',
  reason: 'a wound that heals',
  says: 'own',
};
const withTarget = (more: Partial<DecidedTarget> & Pick<DecidedTarget, 'item'>) =>
  targets.map(one => (one.item === more.item ? { ...one, ...more } : one));
const proposal = proposePrescription(hemodialysisClient, today);
if (proposal.kind === 'barred') throw new Error('the fixture has a proposal');
const faults = (all: readonly DecidedTarget[]) => missingToSign(all, 'A. Dietitian', proposal.targets).join('; ');

describe('what can be signed', () => {
  test('[CLT-51] what is taken over as proposed, with one figure for fluid, lacks nothing', () => {
    expect(faults(targets)).toBe('');
    expect(faults(withTarget(ownProtein))).toBe('');
  });

  // A guideline that the program did not put first is the dietitian's judgment: the next reader must find why.
  test.each(['alternative', 'own'] as const)('[CLT-51] another figure (%s) without a reason is refused', from => {
    expect(faults(withTarget({ item: 'sodium', from }))).toContain('a reason for the sodium target');
    expect(faults(withTarget({ item: 'sodium', from, reason: '  ' }))).toContain('a reason for the sodium target');
    expect(faults(withTarget({ item: 'sodium', from, reason: 'thirst' }))).toBe('');
  });

  test('[CLT-51] what claims to be as proposed and is not is refused', () => {
    expect(faults(withTarget({ item: 'sodium', range: { lo: 0, hi: 5000 } }))).toContain('not as proposed');
    const { range: _, ...potassium } = targets.find(({ item }) => item === 'potassium')!;
    expect(potassium.kind).toBe('withheld');
    expect(faults(withTarget({ ...potassium, kind: 'no-limit' }))).toContain('not as proposed');
  });

  test.each([
    ['a figure that stands for "no end"', { lo: 98, hi: Number.MAX_SAFE_INTEGER }, 'within'],
    ['a million', { lo: 0, hi: 1_000_000 }, 'at-most'],
    ['no number', { lo: Number.NaN, hi: 5 }, 'within'],
    ['a low end that is none', { lo: open, hi: open }, 'at-least'],
    ['below 0', { lo: -1, hi: 5 }, 'within'],
    ['upside down', { lo: 9, hi: 5 }, 'within'],
    ['a most without an end', { lo: 0, hi: open }, 'at-most'],
    ['under, without an end', { lo: 0, hi: open }, 'below'],
    ['a least of 0', { lo: 0, hi: open }, 'at-least'],
    ['a least with a most', { lo: 60, hi: 80 }, 'at-least'],
    ['a most with a least', { lo: 60, hi: 80 }, 'at-most'],
    ['a range without an end', { lo: 60, hi: open }, 'within'],
  ] as const)('[CLT-52] refuses %s', (_, range, limit) => {
    expect(faults(withTarget({ ...ownProtein, range, limit }))).toContain('protein');
  });

  test('[CLT-53] fluid is one figure, up to or at least, and the range of the proposal is not signable', () => {
    const fluid = proposal.targets.fluid;
    if (fluid.kind !== 'proposed') throw new Error('fluid is proposed');
    // Facts section 3.6: 300 mL of urine and 500 to 1000 mL.
    expect(fluid.range).toEqual({ lo: 800, hi: 1300 });
    const fluidAs = (range: DecidedTarget['range'], limit: DecidedTarget['limit']) =>
      faults(withTarget({ item: 'fluid', range: range!, limit: limit! }));
    expect(fluidAs(fluid.range, 'within')).toContain('one figure for fluid');
    expect(fluidAs(fluid.range, 'at-most')).not.toBe('');
    expect(fluidAs({ lo: 1000, hi: 1000 }, 'within')).toContain('one figure for fluid');
    expect(fluidAs({ lo: 0, hi: 1000 }, 'at-most')).toBe('');
    // What is left of the urine and the gain is a limit: as a need it is a decision of one's own (care rules 4).
    expect(fluidAs({ lo: 1000, hi: open }, 'at-least')).toContain('not as proposed');
    expect(fluidAs({ lo: 0, hi: 1400 }, 'at-most')).toContain('not as proposed');
  });

  // 240 mL a cup, 29.57 mL a fluid ounce: 1000 / 60 = 16.67 quarter cups, 33.8 fl oz.
  test('[CLT-53] cups and ounces never tell more than a limit nor less than a need', () => {
    expect(householdFluid({ lo: 0, hi: 1000 }, 'at-most')).toEqual({ cups: '4', isOneCup: false, ounces: '33' });
    expect(householdFluid({ lo: 1000, hi: open }, 'at-least')).toEqual({ cups: '4¼', isOneCup: false, ounces: '34' });
    for (let mL = 60; mL < 4000; mL += 7) {
      expect(Number(householdFluid({ lo: 0, hi: mL }, 'at-most')!.ounces) * 29.57).toBeLessThanOrEqual(mL);
      expect(Number(householdFluid({ lo: mL, hi: open }, 'at-least')!.ounces) * 29.57).toBeGreaterThanOrEqual(mL);
    }
  });

  test('[CLT-54] a choice signed before and not decided so again is named; what followed the proposal is not', () => {
    const before = { ...prescription!, targets: withTarget(ownProtein) };
    expect(changesFromSigned(before.targets, targets).map(({ item }) => item)).toEqual(['protein']);
    expect(changesFromSigned(before.targets, targets.slice(0, 1)).map(({ item }) => item)).toEqual(['protein']);
    expect(changesFromSigned(before.targets, withTarget(ownProtein))).toEqual([]);
    expect(changesFromSigned(prescription!.targets, withTarget(ownProtein))).toEqual([]);
    expect(changesFromSigned([], targets)).toEqual([]);
    const { range: _, limit: __, ...held } = ownProtein;
    const withoutFigure = {
      ...prescription!,
      targets: targets.map(one => (one.item === 'protein' ? { ...held, kind: 'withheld' as const } : one)),
    };
    const free = targets.map(one => (one.item === 'protein' ? { ...held, kind: 'no-limit' as const } : one));
    expect(changesFromSigned(withoutFigure.targets, free).map(({ item }) => item)).toEqual(['protein']);
  });
});

describe('a kept record', () => {
  const kept = recordOf(hemodialysisClient, [ownProtein]);
  const json = () => JSON.parse(JSON.stringify(clientRecordToJson(kept)));

  test('[CLT-55] comes back from JSON as it was, an open end as null', () => {
    expect(wholeClientRecord(json())).toEqual(kept);
    expect(json().prescriptions[0].targets[1].range).toEqual([98, null]);
  });

  test.each([
    ['9007199254740991', { lo: 98, hi: 9007199254740991 }],
    ['null', { lo: 98, hi: null }],
    ['no high end', { lo: 98 }],
  ])('[CLT-55] one of form 1 that wrote an open end as %s is read as open', (_, range) => {
    const { format: __, ...older } = json();
    for (const one of older.prescriptions[0].targets) {
      delete one.kind;
      if (one.range !== undefined) one.range = one.item === 'protein' ? range : { lo: one.range[0], hi: one.range[1] };
    }
    const read = wholeClientRecord(older).prescriptions[0]!.targets;
    expect(read[1]).toMatchObject({ item: 'protein', range: { lo: 98, hi: open } });
    expect(read[2]).toMatchObject({ item: 'sodium', range: { lo: 0, hi: 2300 } });
    expect(decidedWords(read[1]!)).toBe('at least 98 g');
    // Withheld then, and nothing kept says so: neither "no limit" nor a figure.
    expect(decidedWords(read.find(({ item }) => item === 'potassium')!)).toBe('no figure set');
  });

  test.each([
    ['no record', null],
    ['a key nobody reads', { ...json(), more: 1 }],
    ['an assessment cut short', { ...json(), assessments: [{ id: 'a', assessment: { on: '2026-06-15' } }] }],
    ['prescriptions of another kind', { ...json(), prescriptions: 'none' }],
    [
      'a low end that is no number',
      {
        ...json(),
        prescriptions: [{ ...json().prescriptions[0], targets: [{ ...json().prescriptions[0].targets[1], range: [null, 5] }] }],
      },
    ],
    ['results that are none', { ...json(), addedResults: [{ id: 'r', on: '2026-06-15', labs: [{}], weighings: [] }] }],
  ])('[CLT-55] %s is told as damaged, whole, with nothing of the client', (_, damaged) => {
    let fault: unknown;
    try {
      wholeClientRecord(damaged);
    } catch (error) {
      fault = error;
    }
    expect(fault).toBeInstanceOf(Fault);
    expect(fault).toMatchObject({ code: 'client-record-damaged', message: expect.not.stringContaining('A.B.') });
  });

  test('[CLT-55] a newer form is told as one, and not as damaged: nothing of it is to be removed', () => {
    const fault = (() => {
      try {
        return wholeClientRecord({ ...json(), format: 4 });
      } catch (error) {
        return error;
      }
    })();
    expect(fault).toMatchObject({ code: 'client-record-newer', message: expect.not.stringContaining('A.B.') });
  });
});
