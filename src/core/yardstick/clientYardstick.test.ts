import { describe, expect, test } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { byWhatIsTold, notToldIn } from './byLabel.ts';
import { asks, type ClientReason, clientReasons, forbids, reasonText } from './clientReason.ts';
import { additivesRuledOut, type ClientBounds, clientYardstick } from './clientYardstick.ts';
import { judgePlate } from './judgePlate.ts';
import type { Test, Verdict } from './yardstick.ts';

const plate = builtInPlates.find(({ id }) => id === 'on-its-own')!;

const bounds = (more: Partial<ClientBounds> = {}): ClientBounds => ({
  targets: [],
  avoidedFoods: [],
  percent: 30,
  meal: 'lunch',
  useEstimates: true,
  ...more,
});

const sodium = { item: 'sodium', range: { lo: 0, hi: 2300 }, limit: 'at-most' } as const;
const phosphorus = { item: 'phosphorus', range: { lo: 0, hi: 1000 }, limit: 'below' } as const;

describe('the yardstick of one client', () => {
  test('[CLT-62] a lunch of 30 % of 2,300 mg sodium is at most 690 mg on the whole plate', () => {
    const { tests } = clientYardstick(bounds({ targets: [sodium] }));
    expect(tests).toEqual([
      {
        id: 'sodium',
        measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
        basis: 'on-plate',
        atMost: 690,
        source: { kind: 'prescription', text: 'sodium: 30% of 2300 mg a day for lunch' },
      },
    ]);
  });

  test('[CLT-63] phosphorus "below" stays strict, may use estimates, and rules phosphate additives out', () => {
    const { tests } = clientYardstick(bounds({ targets: [phosphorus] }));
    expect(tests.map(({ id }) => id)).toEqual(['phosphateAdditives', 'phosphorus']);
    expect(tests[0]).toMatchObject({ absent: true, source: { text: expect.stringContaining('taken up nearly whole') } });
    expect(tests[1]).toMatchObject({ below: 300, useEstimates: true });
    expect(tests[1]).not.toHaveProperty('atMost');
  });

  test('[CLT-60] what is avoided comes first, each kin once', () => {
    const { tests } = clientYardstick(bounds({ targets: [sodium], avoidedFoods: ['Peanuts', 'peanut allergy', 'dairy and soya'] }));
    expect(tests.map(({ id }) => id)).toEqual(['avoids peanut', 'avoids milk', 'avoids soy', 'sodium']);
    expect(tests[0]).toMatchObject({ measure: { kind: 'ingredient', kin: 'peanut' }, basis: 'on-plate', absent: true });
  });

  test('[CLT-60] a floor, an open end and what is met over a day bound no food', () => {
    const targets = [
      { item: 'potassium', range: { lo: 2000, hi: 4000 }, limit: 'at-least' },
      { item: 'sodium', range: { lo: 0, hi: Number.POSITIVE_INFINITY }, limit: 'at-most' },
      { item: 'energy', range: { lo: 1800, hi: 2000 }, limit: 'within' },
      { item: 'protein', range: { lo: 60, hi: 80 }, limit: 'within' },
      { item: 'phosphorus' },
    ] as unknown as ClientBounds['targets'];
    expect(clientYardstick(bounds({ targets })).tests).toEqual([]);
    expect(additivesRuledOut(targets)).toEqual([]);
  });

  // A target of additives is signed as none: its range ends at 0.
  test('[CLT-60] additives are ruled out where that is signed, phosphate also where phosphorus is limited', () => {
    const none = (item: 'phosphateAdditives' | 'potassiumAdditives', hi = 0) => ({ item, range: { lo: 0, hi }, limit: 'at-most' }) as const;
    const ruledOut = (...targets: ClientBounds['targets']) => additivesRuledOut(targets).map(([, kind]) => kind);
    expect(ruledOut(none('phosphateAdditives'))).toEqual(['phosphate']);
    expect(ruledOut(none('potassiumAdditives'))).toEqual(['potassium']);
    expect(ruledOut(none('potassiumAdditives', 1), none('phosphateAdditives', 1))).toEqual([]);
    expect(ruledOut(phosphorus)).toEqual(['phosphate']);
    expect(ruledOut(sodium)).toEqual([]);
    const { tests } = clientYardstick(bounds({ targets: [none('phosphateAdditives'), phosphorus] }));
    expect(tests[0]?.source.text).toBe('ruled out in the prescription');
  });
});

describe('minerals that a label does not tell', () => {
  const verdictOf = (tests: Verdict['tests']): Verdict => ({
    yardstickId: 'y',
    verdict: 'fits',
    closeCall: false,
    estimated: false,
    why: '',
    tests,
    classes: [],
  });
  const outcome = (testId: string, verdict: Verdict['verdict']) => ({ testId, verdict, closeCall: false, estimated: false, why: '' });

  test('[CLT-63] phosphorus and potassium that cannot be told; what is over stays over, and sodium is always asked for', () => {
    expect(notToldIn(verdictOf([outcome('phosphorus', "can't tell"), outcome('sodium', "can't tell")]))).toEqual(['phosphorus']);
    expect(notToldIn(verdictOf([outcome('phosphorus', 'over'), outcome('potassium', "can't tell")]))).toEqual(['potassium']);
    expect(notToldIn(verdictOf([outcome('potassium', 'fits')]))).toEqual([]);
  });

  test('[CLT-63] they are judged by their additives, once, among what must not be named', () => {
    const potassium = { item: 'potassium', range: { lo: 0, hi: 3000 }, limit: 'at-most' } as const;
    const yardstick = clientYardstick(bounds({ targets: [sodium, potassium, phosphorus], avoidedFoods: ['peanuts'] }));
    const ids = (...notTold: Parameters<typeof byWhatIsTold>[1]) => byWhatIsTold(yardstick, notTold).tests.map(({ id }) => id);
    expect(byWhatIsTold(yardstick, [])).toBe(yardstick);
    expect(ids('potassium')).toEqual(['avoids peanut', 'phosphateAdditives', 'potassiumAdditives', 'sodium', 'phosphorus']);
    expect(ids('phosphorus')).toEqual(['avoids peanut', 'phosphateAdditives', 'sodium', 'potassium']);
    expect(byWhatIsTold(yardstick, ['potassium']).tests[2]).toEqual({
      id: 'potassiumAdditives',
      measure: { kind: 'additive', class: 'potassium' },
      basis: 'on-plate',
      absent: true,
      source: yardstick.tests.find(({ id }) => id === 'potassium')?.source,
    });
    const silent = { ...yardstick, tests: [] };
    expect(byWhatIsTold(silent, ['phosphorus']).tests).toMatchObject([{ source: { kind: 'prescription', text: 'phosphorus' } }]);
  });
});

describe('the reasons of a verdict', () => {
  const yardstick = clientYardstick(
    bounds({ targets: [sodium, phosphorus], avoidedFoods: ['peanuts', 'garlic', 'milk'], percent: 10, useEstimates: false }),
  );
  const reasonsOf = (statement: string | undefined, sodiumMg: number, more: Partial<Parameters<typeof clientReasons>[0]> = {}) => {
    const food = foodWith('Slices', {
      panel: { sodiumMg, energyKcal: 100, phosphorusMg: '20 mg' },
      ...(statement === undefined ? {} : { statement }),
    });
    const verdict = judgePlate({ food, plate, yardstick });
    return clientReasons({ yardstick, verdict, allergies: new Set(['peanut']), notTold: [], ...more });
  };
  const told = (reasons: readonly ClientReason[]) =>
    reasons.map(reason => [reason.kind, forbids(reason) ? 'never' : asks(reason) ? 'ask' : 'may']);

  test('[CLT-60] the gravest first: what forbids, what has to be asked, what is over, what fits', () => {
    // 10 % of 2300 mg are 230 mg.
    expect(told(reasonsOf('PEANUTS, SPICES, SODIUM PHOSPHATES.', 400))).toEqual([
      ['allergen', 'never'],
      ['additive', 'never'],
      ['avoided', 'ask'],
      ['nutrient', 'may'],
      ['nutrient', 'may'],
      ['avoided', 'may'],
    ]);
    expect(reasonsOf('PEANUTS, SPICES, SODIUM PHOSPHATES.', 400)[3]).toMatchObject({ verdict: 'over', bound: 230, nutrient: 'sodiumMg' });
    expect(told(reasonsOf(undefined, 100)).filter(([, what]) => what === 'ask')).toHaveLength(4);
  });

  test('[CLT-64] what is never safe forbids, what has to be heated does not', () => {
    const line = { en: 'Heat it until it steams', es: 'Caliéntelo' };
    const unsafe = (rule: 'heat' | 'never') => reasonsOf('RICE.', 100, { unsafe: { id: 'x', rule, line } });
    expect(told(unsafe('never'))[0]).toEqual(['unsafe', 'never']);
    expect(reasonText(unsafe('never')[0]!)).toBe('Not for this client. Heat it until it steams.');
    // Nothing is worse than it here; what fits comes after it.
    expect(told(unsafe('heat'))[0]).toEqual(['unsafe', 'may']);
    expect(reasonText(unsafe('heat')[0]!)).toBe('Heat it until it steams.');
  });

  test('[CLT-63] a mineral that is not told comes after what is over and before what fits', () => {
    const kinds = (sodiumMg: number) => reasonsOf('RICE.', sodiumMg, { notTold: ['phosphorus'] }).map(({ kind }) => kind);
    expect(kinds(400).slice(0, 2)).toEqual(['nutrient', 'mineral-not-told']);
    expect(kinds(100)[0]).toBe('mineral-not-told');
    expect(reasonText({ kind: 'mineral-not-told', testId: 'phosphorus', mineral: 'phosphorus' })).toBe(
      'Fits by what the label tells; phosphorus not known.',
    );
  });

  test('[CLT-60] each reason in words', () => {
    const words = reasonsOf('PEANUTS, SPICES, SODIUM PHOSPHATES.', 400).map(reasonText);
    expect(words[0]).toBe('Not for this client: peanuts (allergy). Slices: “PEANUTS” named on the label.');
    expect(words[1]).toBe(
      'Not for this client: a phosphate additive (phosphorus is limited, and an added phosphate is taken up nearly whole). Slices: sodium phosphates named on the label.',
    );
    expect(words[2]).toBe('Ask first about garlic (avoided). Slices: “SPICES” on the label may hold or hide it.');
    expect(words[3]).toContain('400 mg sodium on the plate, at most 230 mg: 170 mg over');
    expect(words[5]).toBe('milk (avoided): none named on the label.');
  });

  test('[CLT-60] nearly over, and figures that nobody knows; a test that is not in the yardstick gives no reason', () => {
    const nearly: Test = { ...yardstick.tests.find(({ id }) => id === 'sodium')!, slack: 20 };
    const slackened = { ...yardstick, tests: [nearly] };
    const verdict = judgePlate({ food: foodWith('Slices', { panel: { sodiumMg: 240 } }), plate, yardstick: slackened });
    const input = { yardstick: slackened, verdict, allergies: new Set<string>(), notTold: ['potassium'] as const };
    expect(clientReasons(input).map(({ kind }) => kind)).toEqual(['nutrient', 'mineral-not-told']);
    expect(clientReasons(input)[0]).toMatchObject({ verdict: 'nearly', judged: { lo: 240, hi: 240 } });
    const unknown = judgePlate({ food: foodWith('Slices', {}), plate, yardstick: slackened });
    const [reason] = clientReasons({ ...input, verdict: unknown });
    expect(asks(reason!)).toBe(true);
    expect(reason).not.toHaveProperty('judged');
    expect(clientReasons({ ...input, yardstick: { ...yardstick, tests: [] }, notTold: [] })).toEqual([]);
  });
});
