import { describe, expect, it } from 'vitest';
import { isSameShape } from './sameShape.ts';

describe('a draft of an earlier form', () => {
  const now = { title: '', count: 1, isOn: false, lines: [{ text: '' }], part: { unit: 'kg' } };

  it('[WEB-4] fits when every field is there with its kind', () => {
    expect(isSameShape(now, { title: 'x', count: 2, isOn: true, lines: [], part: { unit: 'lb' } })).toBe(true);
    expect(isSameShape(now, { ...now, lines: [{ text: 'a' }, { text: 'b' }] })).toBe(true);
    expect(isSameShape({ lines: [] }, { lines: [{ anything: 1 }] })).toBe(true);
  });

  it.each([
    ['a field is gone', { title: 'x', count: 2, isOn: true, lines: [] }],
    ['a field is new', { ...now, more: '' }],
    ['a kind is another', { ...now, count: '1' }],
    ['an entry is another', { ...now, lines: [{ text: 'a' }, { words: 'b' }] }],
    ['a list is none', { ...now, lines: {} }],
    ['a part is a list', { ...now, part: [] }],
    ['nothing is there', null],
    ['a part is null', { ...now, part: null }],
  ])('[WEB-4] does not fit when %s', (_, kept) => {
    expect(isSameShape(now, kept)).toBe(false);
  });
});
