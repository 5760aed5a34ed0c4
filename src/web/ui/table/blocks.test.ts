import { describe, expect, it } from 'vitest';
import { blocksOf } from './blocks.ts';

const rows = Array.from({ length: 60 }, (_, at) => at);
const ends = (first: number, last: number) => blocksOf(rows, first, last).map(block => [block[0], block.at(-1)]);

describe('rows in view', () => {
  it('[WEB-29] are told in blocks of 25 that stay the same while one scrolls', () => {
    expect(ends(0, 12)).toEqual([[0, 24]]);
    expect(ends(3, 24)).toEqual([[0, 24]]);
    expect(ends(20, 51)).toEqual([
      [0, 24],
      [25, 49],
      [50, 59],
    ]);
    expect(blocksOf([], 0, -1)).toEqual([]);
  });
});
