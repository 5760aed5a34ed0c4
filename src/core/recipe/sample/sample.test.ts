import { describe, expect, it } from 'vitest';
import { exactly } from '#core/quantity/interval.ts';
import { traced } from '../content.ts';
import type { PrintedServingFacts } from '../printedServing.ts';
import { randomNumbers } from '../randomNumbers.ts';
import { treeOf } from '../recipeFixture.ts';
import { recipeModel } from '../recipeModel.ts';
import { sampleRecipes } from '../sampleRecipes.ts';
import { exchange, gaussianDirections } from './directions.ts';
import { dot } from './dot.ts';
import { hardRows } from './hardRows.ts';
import { lineStep } from './lineStep.ts';
import { observations } from './observations.ts';
import { decays, typicalUse } from './typicalUse.ts';

const array = (...values: number[]): Float64Array => Float64Array.from(values);
const facts = (printed: PrintedServingFacts['printed'] = {}): PrintedServingFacts => ({ servingG: exactly(100), printed });
const wet = { fatG: exactly(0), carbohydrateG: exactly(10), proteinG: exactly(0) };

function moments(draw: () => number, count = 20_000): { mean: number; variance: number } {
  let [sum, squares] = [0, 0];
  for (let at = 0; at < count; at++) {
    const value = draw();
    sum += value;
    squares += value * value;
  }
  return { mean: sum / count, variance: squares / count - (sum / count) ** 2 };
}

describe('directions', () => {
  it('[RCP-7] an exchange takes from one what it gives another, or lets as much water leave', () => {
    const seen = new Set<string>();
    for (let first = 0; first < 4; first++)
      for (let second = 0; second < 3; second++) {
        const drawn = [(first + 0.5) / 4, (second + 0.5) / 3];
        const direction = array(0, 0, 0, 0);
        exchange(direction, 3, () => drawn.shift()!);
        seen.add([...direction].join(' '));
        const [a, b, c, water] = direction;
        expect(a! + b! + c! - water!).toBe(0);
      }
    // Three leaves against each other either way, and each with the water.
    expect([...seen].sort()).toEqual(
      ['-1 0 1 0', '-1 1 0 0', '0 -1 1 0', '0 0 1 1', '0 1 -1 0', '0 1 0 1', '1 -1 0 0', '1 0 -1 0', '1 0 0 1'].sort(),
    );
  });

  it('[RCP-7] a drawn direction keeps the mass, and moves little along what is known well', () => {
    const known = { coefficients: array(1, 0, 0), mean: 40, variance: 1e-4 };
    const x = array(40, 60, 10);
    const { normal } = randomNumbers(3);
    const direction = array(0, 0, 0);
    const wander = gaussianDirections([known], x, 100, 3);
    const drawn = () => {
      direction.fill(0);
      wander(direction, normal);
      expect(Math.abs(direction[0]! + direction[1]! - direction[2]!)).toBeLessThan(1e-9);
      return direction[0]!;
    };
    expect(moments(drawn, 2_000).variance).toBeCloseTo(1e-4, 5);
    // What is not observed moves by half of what there is and a hundredth of the serving.
    const free = gaussianDirections([], x, 100, 3);
    const other = () => {
      direction.fill(0);
      free(direction, normal);
      return direction[2]!;
    };
    // Precisions of 60 ± 31, 40 ± 21 and water 10 ± 6 under one sum that is kept: 1 / (1/36 + 1/(31² + 21²)).
    expect(Math.abs(moments(other).variance - 1 / (1 / 36 + 1 / (31 ** 2 + 21 ** 2)))).toBeLessThan(1.5);
  });
});

describe('one step along a line', () => {
  const between = (lo: number, hi: number) => ({ coefficients: array(1), lo, hi });

  // A normal of 3 ± 2 cut at nothing: λ = φ(1.5) / Φ(1.5) = 0.1388, mean 3 + 2 λ, variance 4 (1 − 1.5 λ − λ²).
  it.each([
    ['what is known as a normal', { mean: 3, variance: 4 }, [0, 100], 0, 3.2776, 3.09],
    ['only between its ends', undefined, [2, 8], 0, 5, 3],
    ['falling with grams', undefined, [0, 1000], 0.5, 2, 4],
  ] as const)('[RCP-14] draws %s', (_, known, [lo, hi], fall, mean, variance) => {
    const x = array(5);
    const observed = known === undefined ? [] : [{ coefficients: array(1), ...known }];
    const move = lineStep(x, [between(lo, hi)], observed, array(fall), randomNumbers(5));
    const drawn = moments(() => {
      move(array(1));
      return x[0]!;
    });
    expect(Math.abs(drawn.mean - mean)).toBeLessThan(0.08);
    expect(Math.abs(drawn.variance - variance)).toBeLessThan(0.25);
  });

  it('[RCP-3] stays between the ends of every row, in either direction, and keeps count of what each comes to', () => {
    const x = array(5, 5);
    const rows = [
      { coefficients: array(1, 1), lo: 8, hi: 12 },
      { coefficients: array(1, -1), lo: 0, hi: Number.POSITIVE_INFINITY },
      { coefficients: array(0, 1), lo: 1, hi: Number.POSITIVE_INFINITY },
    ];
    const known = { coefficients: array(1, 0), mean: 100, variance: 1 };
    const move = lineStep(x, rows, [known], array(0, 0), randomNumbers(9));
    for (let at = 0; at < 500; at++) {
      move(at % 2 === 0 ? array(1, 0) : array(at % 3 === 0 ? 1 : -1, 1));
      const sums = rows.map(({ coefficients }) => dot(coefficients, x));
      expect(sums[0]!).toBeGreaterThan(8 - 1e-9);
      expect(sums[0]!).toBeLessThan(12 + 1e-9);
      expect(sums[1]!).toBeGreaterThan(-1e-9);
      expect(sums[2]!).toBeGreaterThan(1 - 1e-9);
    }
    // Drawn towards 100 grams of the first, it ends in the corner.
    expect(x[0]!).toBeGreaterThan(10);
  });

  it('[RCP-14] does not move where nothing holds the line, or no room is left', () => {
    const x = array(5);
    lineStep(x, [], [], array(0), randomNumbers(1))(array(1));
    lineStep(x, [between(5, 5)], [], array(0), randomNumbers(1))(array(1));
    lineStep(x, [between(0, Number.POSITIVE_INFINITY)], [], array(0), randomNumbers(1))(array(1));
    lineStep(x, [between(Number.NEGATIVE_INFINITY, 10)], [], array(0), randomNumbers(1))(array(1));
    expect(x[0]).toBe(5);
  });
});

describe('what draws keep to and lean to', () => {
  it('[RCP-7] hard rows are all but the printed figures and ties; a start that breaks one by a little moves its end', () => {
    const tree = treeOf('Milk, sugar');
    const recipe = recipeModel(tree, 'other', facts({ ...wet, sodiumMg: exactly(50) }));
    const x = array(60, 60.5, -1e-9);
    const rows = hardRows(recipe, 3, x);
    const kinds = recipe.meanings.filter(({ kind }) => kind !== 'printed' && kind !== 'tie').map(({ kind }) => kind);
    expect(kinds).toEqual(['mass', 'moisture', 'order']);
    expect(rows.length).toBe(kinds.length + 3);
    expect(rows[0]).toEqual({ coefficients: array(1, 1, -1), lo: 100, hi: 120.5 + 1e-9 });
    expect(rows[2]).toEqual({ coefficients: array(1, -1, 0), lo: -0.5, hi: Number.POSITIVE_INFINITY });
    expect(rows.slice(3)).toEqual([
      { coefficients: array(1, 0, 0), lo: 0, hi: Number.POSITIVE_INFINITY },
      { coefficients: array(0, 1, 0), lo: 0, hi: Number.POSITIVE_INFINITY },
      { coefficients: array(0, 0, 1), lo: 0, hi: expect.closeTo(23, 9) },
    ]);
    expect([...x]).toEqual([60, 60.5, 0]);
  });

  it('a printed figure is as wide as its rounding, the spread of the figures and what nobody knows together', () => {
    const tree = treeOf('Milk, zantle');
    const x = array(60, 40, 0);
    const [protein, ...others] = observations(
      tree,
      facts({ proteinG: { lo: 2, hi: 4 }, fatG: { lo: 2, hi: Number.POSITIVE_INFINITY } }),
      x,
      100,
    );
    const [milk, zantle] = tree.leaves.map(({ content }) => content.per1G.proteinG);
    expect(others).toEqual([]);
    expect([protein!.mean, ...protein!.coefficients]).toEqual([3, milk!.mid, zantle!.mid, 0]);
    // A flat stretch of 2 has a variance of 4/12; 0.002 g in a gram of serving; 0.8 of half the spread, an eighth of it where nobody knows.
    const sds = [(0.8 * (milk!.hi - milk!.lo)) / 2, (zantle!.hi - zantle!.lo) / 8];
    const variance = 4 / 12 + 0.2 ** 2 + (sds[0]! * 60.2) ** 2 + (sds[1]! * 40.2) ** 2;
    expect(protein!.variance).toBeCloseTo(variance, 9);
  });

  it('what neither table nor label knows is little: at most 8 mg in a gram of food, and 0.1 mg of a mineral', () => {
    const range = exactly(0);
    const all = observations(treeOf('Water'), facts(Object.fromEntries(traced.map(key => [key, range]))), array(100, 0), 100);
    expect(all.length).toBe(traced.length);
    for (const [at, { mean, variance }] of all.entries()) {
      expect([mean, variance > 0], traced[at]).toEqual([0, true]);
      expect(Math.sqrt(variance) / 100, traced[at]).toBeLessThanOrEqual(traced[at]!.endsWith('Mg') ? 0.1 : 0.008);
    }
  });

  it('[RCP-3] [RCP-7] all recipes in order are as likely, but for the water that left', () => {
    const tree = treeOf('Water, purified water');
    const dry = facts({ fatG: exactly(0), carbohydrateG: exactly(0), proteinG: exactly(0) });
    const recipe = recipeModel(tree, 'other', dry);
    const start = new Float64Array(recipe.model.columns.length);
    start.set([75, 26, 1]);
    const { grams } = sampleRecipes(tree, 'other', dry, recipe, start, 3);
    const meanOf = (of: (recipe: Float64Array) => number) => grams.reduce((sum, one) => sum + of(one), 0) / grams.length;
    const second = meanOf(one => one[1]!);
    const left = meanOf(one => one[0]! + one[1]! - 100);
    // 3 g leave typically, 10 g at most: a mean of 3 − 10 / (e^(10/3) − 1) = 2.63 g. The second of two is even from nothing to half of 102.6 g.
    expect(Math.abs(left - 2.63)).toBeLessThan(0.6);
    expect(Math.abs(second - 25.7)).toBeLessThan(3);
    expect(Math.abs(meanOf(one => (one[1]! - second) ** 2) - 51.3 ** 2 / 12)).toBeLessThan(45);
    expect(grams.every(one => one[1]! >= 0 && one[1]! <= one[0]! + 1e-9)).toBe(true);
  });

  it('phosphates are typical together, other additives each, salt and foods not', () => {
    const tree = treeOf('Water, sugar, salt, disodium phosphate, sodium tripolyphosphate, sodium citrate');
    // In a meat 0.35 ± 0.12 % together; sodium citrate 0.3 ± 0.21 % (from memory).
    expect(typicalUse(tree, 'meat', 200)).toEqual([
      { coefficients: array(0, 0, 0, 1, 1, 0, 0), mean: expect.closeTo(0.7, 9), variance: expect.closeTo(0.24 ** 2, 9) },
      { coefficients: array(0, 0, 0, 0, 0, 1, 0), mean: expect.closeTo(0.6, 9), variance: expect.closeTo(0.42 ** 2, 9) },
    ]);
    expect(typicalUse(treeOf('Water, salt'), 'meat', 200)).toEqual([]);
  });

  it('trifles and the water that left fall off with their typical level, additives and foods do not', () => {
    // Spices are typically 0.5 %, and of a food a tenth dry 5.5 % left.
    const decay = decays(treeOf('Water, sugar, spices, sodium citrate'), facts(wet), 100);
    expect([...decay]).toEqual([0, 0, expect.closeTo(1 / 0.5, 9), 0, expect.closeTo(1 / 5.5, 9)]);
  });
});
