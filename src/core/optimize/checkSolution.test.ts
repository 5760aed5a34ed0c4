import { describe, expect, it } from 'vitest';
import { checkSolution, solutionTolerance } from './checkSolution.ts';
import type { LinearModel, Objective } from './linearModel.ts';

/** 100 g of flour and sugar with 20 to 25 g sugar: at most 80 g flour, by hand. */
const model: LinearModel = {
  columns: [
    { name: 'flour', lo: 0, hi: Number.POSITIVE_INFINITY },
    { name: 'sugar', lo: 0, hi: 30 },
  ],
  rows: [
    {
      name: 'mass',
      lo: 100,
      hi: 100,
      terms: [
        { at: 0, coefficient: 1 },
        { at: 1, coefficient: 1 },
      ],
    },
    { name: 'sugars', lo: 20, hi: 25, terms: [{ at: 1, coefficient: 1 }] },
  ],
};
const objective: Objective = { sense: 'maximum', terms: [{ at: 0, coefficient: 2 }] };

describe('checkSolution', () => {
  it('[OPT-1] a right answer is clean', () => {
    expect(checkSolution(model, objective, 160, [80, 20])).toEqual([]);
  });

  it('[OPT-1] a row, a bound and a value that are broken are named with their figures', () => {
    expect(checkSolution(model, objective, 140, [70, 30])).toEqual(['sugars is 30, outside 20 to 25']);
    expect(checkSolution(model, objective, 160, [80, 31])).toEqual([
      'sugar is 31, outside 0 to 30',
      'mass is 111, outside 100 to 100',
      'sugars is 31, outside 20 to 25',
    ]);
    expect(checkSolution(model, objective, -10, [-5, 105])[0]).toBe('flour is -5, outside 0 to Infinity');
    expect(checkSolution(model, objective, 161, [80, 20])).toEqual(['the value is 161, its columns give 160']);
  });

  it('[OPT-1] an answer that is no number breaks everything it stands in', () => {
    expect(checkSolution(model, objective, Number.NaN, [Number.NaN, 20])).toEqual([
      'flour is NaN, outside 0 to Infinity',
      'mass is NaN, outside 100 to 100',
      'the value is NaN, its columns give NaN',
    ]);
  });

  it('[OPT-1] what is off by less than a millionth of the size of a condition is right, by more is not', () => {
    const off = 100 * solutionTolerance;
    expect(checkSolution(model, objective, 160, [80 + off * 0.5, 20])).toEqual([]);
    expect(checkSolution(model, objective, 160, [80 + off * 2, 20])).toHaveLength(2);
  });
});
