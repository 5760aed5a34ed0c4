import { parseSync } from 'oxc-parser';
import { describe, expect, test } from 'vitest';
import { type Mutant, mutantsOf, mutated, watched } from './mutation/mutants.ts';

const source = `export function allowed(grams: 1 | 2, isFluid = true): number {
  if (grams * 2 <= 3) count(grams);
  return isFluid && [1].some(one => one > grams) ? { 5: Math.min(grams, 4) }[5] : 0;
}
`;

describe('the mutants of a source', () => {
  const mutants = mutantsOf('allowed.ts', source);
  const of = (kind: Mutant['kind']): string[] =>
    mutants.filter(mutant => mutant.kind === kind).map(({ start, end, replacement }) => `${source.slice(start, end)} → ${replacement}`);

  test('each kind, and no number of a type or of a name', () => {
    expect(of('comparison')).toEqual([
      'grams * 2 <= 3 → grams * 2 < 3',
      'grams * 2 <= 3 → grams * 2 > 3',
      'one > grams → one >= grams',
      'one > grams → one <= grams',
    ]);
    expect(of('arithmetic')).toEqual(['grams * 2 → grams / 2']);
    expect(of('boolean')).toEqual(['true → false']);
    expect(of('number').map(text => text[0])).toEqual(['2', '3', '1', '4', '5', '0']);
    expect(of('method')).toEqual([
      '[1].some(one => one > grams) → [1].every(one => one > grams)',
      'Math.min(grams, 4) → Math.max(grams, 4)',
    ]);
    expect(of('statement')).toEqual(['count(grams) → undefined']);
    expect(of('logic')).toEqual(['isFluid && [1].some(one => one > grams) → isFluid || [1].some(one => one > grams)']);
    expect(of('condition')).toHaveLength(4);
    expect(of('return')).toHaveLength(2);
  });

  test('each is a source that can be read, and another one', () => {
    for (const mutant of mutants) {
      const other = mutated(source, mutant);
      expect(other).not.toBe(source);
      expect(() => mutantsOf('allowed.ts', other)).not.toThrow();
    }
  });

  test('one that could not be read is none: ?? beside && or ||, a method that every object has', () => {
    const odd = 'export const say = (a?: number, b?: number, c = 0): string => ((a ?? b ?? c) > 0 ? (a ?? c).toString() : "") || "none";';
    for (const mutant of mutantsOf('say.ts', odd)) {
      const other = mutated(odd, mutant);
      expect([other, parseSync('say.ts', other).errors]).toEqual([other, []]);
    }
  });

  test('a watched source tells what is reached', () => {
    const reached: number[] = [];
    Object.assign(globalThis, { reached: (number: number) => reached.push(number) });
    const inner = 'const least = Math.min(1 + 2, 4) > 3 ? 5 : 6; export { least };';
    const numbered = [...mutantsOf('least.ts', inner).entries()];
    new Function(watched(inner, numbered).replace('export { least };', ''))();
    Object.assign(globalThis, { reached: undefined });
    const kept = numbered.filter(([number]) => !reached.includes(number)).map(([, { start, end }]) => inner.slice(start, end));
    expect(kept).toEqual(['5']);
  });
});
