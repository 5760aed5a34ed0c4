import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hanging, plain, wrap } from './layOut.ts';

describe('layOut', () => {
  it('[CLI-9] text from outside cannot steer the terminal', () => {
    expect(plain('a\u001B[31mb\nc\u202Ed')).toBe('a [31mb c d');
  });

  it('[CLI-10] no line is wider than the terminal, and no word is lost', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-zé,.]{1,30}$/), { minLength: 1 }), fc.integer({ min: 30, max: 120 }), (words, width) => {
        const lines = [...wrap(words.join(' '), width, '    '), ...hanging('Why:', words.join(' '), width, '  ')];
        expect(Math.max(...lines.map(line => [...line].length))).toBeLessThanOrEqual(width);
        expect(wrap(words.join(' '), width).join('').replaceAll(' ', '')).toBe(words.join(''));
      }),
    );
  });
});
