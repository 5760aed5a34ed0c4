import { describe, expect, it } from 'vitest';
import { isLineOf, type Label, labelOf, typedLabel } from './typedLabel.ts';

const label: Label = {
  id: 'label-1',
  name: 'Ham slices',
  market: 'us',
  front: ['lean'],
  serving: { household: '2 slices', grams: 56, perContainer: 'about 8' },
  panel: { energyKcal: 60, sodiumMg: '470 mg 20%', saltG: 1.2 },
  statement: 'HAM, WATER, SALT.',
};

describe('a label that is typed', () => {
  it('[WEB-20] has every line at the place of label JSON, empty where nothing is printed', () => {
    const typed = typedLabel(label);
    expect(typed).toMatchObject({
      name: 'Ham slices',
      maker: '',
      reason: '',
      serving: { household: '2 slices', grams: '56', milliliters: '' },
    });
    expect(typed.panel).toMatchObject({ energyKcal: '60', sodiumMg: '470 mg 20%', proteinG: '' });
  });

  it('[WEB-20] is sent without its empty lines; what the form has no line for is carried over', () => {
    const { id: _id, ...sent } = label;
    expect(labelOf(typedLabel(label), label)).toEqual({
      ...sent,
      serving: { household: '2 slices', grams: '56', perContainer: 'about 8' },
      panel: { energyKcal: '60', sodiumMg: '470 mg 20%', saltG: 1.2 },
    });
  });

  it('[WEB-20] a line that is emptied is not printed any more', () => {
    const typed = typedLabel(label);
    const sent = labelOf({ ...typed, statement: '  ', panel: { ...typed.panel, sodiumMg: '' } }, label);
    expect(sent.statement).toBeUndefined();
    expect(sent.panel).toEqual({ energyKcal: '60', saltG: 1.2 });
  });

  it('[WEB-20] what is noticed stands beside its line where the form has it', () => {
    expect(['name', 'panel.sodiumMg', 'serving.grams'].map(isLineOf)).toEqual([true, true, true]);
    expect(['', 'panel', 'panel.saltG', 'serving.perContainer', 'front[0]', 'market'].map(isLineOf)).toEqual(Array(6).fill(false));
  });
});
