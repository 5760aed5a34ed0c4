import { describe, expect, it } from 'vitest';
import type { AimStates } from './aimStates.ts';
import { clientAims } from './clientAims.ts';
import type { FoodTarget } from './limitKind.ts';

const most = (item: FoodTarget['item'], hi: number): FoodTarget => ({ item, range: { lo: 0, hi }, limit: 'at-most' });
const least = (item: FoodTarget['item'], lo: number): FoodTarget => ({
  item,
  range: { lo, hi: Number.POSITIVE_INFINITY },
  limit: 'at-least',
});

function aims(targets: readonly FoodTarget[], states: AimStates = {}, isSuppressed = false) {
  return clientAims({ targets, isSuppressed, states }).map(({ kind, from }) => `${kind} (${from})`);
}

describe('what foods are picked for', () => {
  it('[CLT-65] nothing signed and nothing known: no aim; sodium alone is kept by the verdict and is none', () => {
    expect(aims([])).toEqual([]);
    expect(aims([most('sodium', 2000)])).toEqual([]);
  });

  it('[CLT-65] the gravest first, whatever the order in which targets are signed', () => {
    const targets = [most('fluid', 1000), most('phosphorus', 1000), least('protein', 80), most('potassium', 2500)];
    const inOrder = [
      'safe-to-eat (record)',
      'less-potassium (signed)',
      'less-fluid (signed)',
      'less-phosphorus (signed)',
      'more-protein (signed)',
    ];
    expect(aims(targets, {}, true)).toEqual(inOrder);
    expect(aims(targets.toReversed(), {}, true)).toEqual(inOrder);
  });

  it('[CLT-65] least phosphorus asks for no phosphate named before it asks for few milligrams', () => {
    const [aim] = clientAims({ targets: [most('phosphorus', 1000)], isSuppressed: false });
    expect(aim?.criteria).toEqual([
      { kind: 'no-additive', class: 'phosphate' },
      { kind: 'amount', of: 'phosphorusMg', wanted: 'least' },
    ]);
  });

  it('[CLT-65] what is signed stands before what the record shows', () => {
    expect(aims([least('phosphorus', 800)], { phosphate: 'food' })).toEqual(['more-phosphorus (signed)']);
    expect(aims([most('potassium', 2500)], { potassium: 'low' })).toEqual(['less-potassium (signed)']);
    expect(aims([], { phosphate: 'food', potassium: 'low' })).toEqual(['more-potassium (record)', 'less-phosphorus (record)']);
  });

  it('[CLT-65] while only additives are to be left out, food is picked for none of them and not for few milligrams', () => {
    expect(aims([], { phosphate: 'additives', potassium: 'additives' })).toEqual([
      'no-potassium-additive (record)',
      'no-phosphate-additive (record)',
    ]);
    const none: FoodTarget = { item: 'phosphateAdditives', range: { lo: 0, hi: 0 }, limit: 'at-most' };
    expect(aims([none])).toEqual(['no-phosphate-additive (signed)']);
  });

  it('[CLT-65] a need asks for no additive but where the prescription rules it out', () => {
    const of = (targets: readonly FoodTarget[]) => clientAims({ targets, isSuppressed: false })[0]!.criteria.map(({ kind }) => kind);
    expect(of([least('phosphorus', 800)])).toEqual(['amount']);
    expect(of([least('phosphorus', 800), { item: 'phosphateAdditives', range: { lo: 0, hi: 0 }, limit: 'at-most' }])).toEqual([
      'no-additive',
      'amount',
    ]);
  });

  it('[CLT-65] wasting asks for energy and protein in one, before phosphorus; not for what has a most', () => {
    expect(aims([least('protein', 80), most('phosphorus', 1000)], { isWasting: true })).toEqual([
      'eat-enough (record)',
      'less-phosphorus (signed)',
    ]);
    const [aim] = clientAims({ targets: [most('protein', 60)], isSuppressed: false, states: { isWasting: true } });
    expect(aim?.criteria).toEqual([{ kind: 'amount', of: 'energyKcal', wanted: 'most' }]);
    // A range has to be reached too: 60 to 80 g does not stand against eating enough.
    const within: FoodTarget = { item: 'protein', range: { lo: 60, hi: 80 }, limit: 'within' };
    expect(clientAims({ targets: [within], isSuppressed: false, states: { isWasting: true } })[0]?.criteria).toHaveLength(2);
    expect(aims([within])).toEqual([]);
  });

  it('[CLT-65] "at least" is a need as one figure and as an open end; fluid has both kinds', () => {
    const oneFigure: FoodTarget = { item: 'fluid', range: { lo: 2000, hi: 2000 }, limit: 'at-least' };
    expect(aims([oneFigure])).toEqual(['more-fluid (signed)']);
    expect(aims([least('fluid', 2000)])).toEqual(['more-fluid (signed)']);
    expect(aims([most('fluid', 1000)])).toEqual(['less-fluid (signed)']);
  });
});
