import { describe, expect, test } from 'vitest';
import { narrowChoices } from './narrowChoices.ts';

const choices = [
  { key: 'a', words: 'Blue chair', note: 'oak' },
  { key: 'b', words: 'Señora table' },
  { key: 'c', words: 'Chair of blue glass', note: 'ash' },
];
const keysFor = (typed: string) => narrowChoices(choices, typed).map(({ key }) => key);

describe('choices narrowed by what is typed', () => {
  test('[PCS-4] every typed word is found somewhere, in the order of the list', () => {
    expect(keysFor('')).toEqual(['a', 'b', 'c']);
    expect(keysFor('  ')).toEqual(['a', 'b', 'c']);
    expect(keysFor('blue chair')).toEqual(['a', 'c']);
    expect(keysFor('chair  BLUE ash')).toEqual(['c']);
    expect(keysFor('chair table')).toEqual([]);
  });

  test('[PCS-4] capitals and accents do not matter, on either side', () => {
    expect(keysFor('senora')).toEqual(['b']);
    expect(keysFor('SEÑORA')).toEqual(['b']);
    expect(keysFor('chàir')).toEqual(['a', 'c']);
  });
});
