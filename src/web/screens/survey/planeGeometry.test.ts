import { describe, expect, test } from 'vitest';
import { areaUnder, nearestFood, nextFood, planeScale, roundStep } from './planeGeometry.ts';

const foods = [
  { foodId: 'a', energyKcal: 50, sodiumMg: 100 },
  { foodId: 'b', energyKcal: 80, sodiumMg: 230 },
  { foodId: 'c', energyKcal: 160, sodiumMg: 900 },
];
const scale = planeScale(foods, 500, 400);

describe('the plane', () => {
  test('steps are 1, 2 or 5 times a power of ten', () => {
    expect([3, 37, 60, 900, 0].map(roundStep)).toEqual([5, 50, 100, 1000, 1]);
  });
  test('every food lies inside the frame, energy to the right, sodium up', () => {
    for (const { energyKcal, sodiumMg } of foods) {
      expect(scale.x(energyKcal)).toBeGreaterThan(0);
      expect(scale.x(energyKcal)).toBeLessThan(500);
      expect(scale.y(sodiumMg)).toBeGreaterThan(0);
      expect(scale.y(sodiumMg)).toBeLessThan(400);
    }
    expect(scale.x(160)).toBeGreaterThan(scale.x(50));
    expect(scale.y(900)).toBeLessThan(scale.y(100));
  });
  test('the area under a line ends at the frame, also where the line leaves it', () => {
    const corners = (slope: number, offset: number) =>
      areaUnder({ slope, offset }, scale)
        .split(' ')
        .map(corner => corner.split(',').map(Number));
    for (const [x, y] of corners(1, -40)) {
      expect(x).toBeGreaterThanOrEqual(scale.x(0) - 0.1);
      expect(y).toBeLessThanOrEqual(scale.y(0) + 0.1);
    }
    // sodium at most energy − 40: the line meets the floor at 40 kcal
    expect(corners(1, -40)[1]![0]).toBeCloseTo(scale.x(40), 0);
    // sodium at most 140 mg: a level line
    expect(
      corners(0, 140)
        .slice(0, 2)
        .map(([, y]) => y),
    ).toEqual([expect.closeTo(scale.y(140), 0), expect.closeTo(scale.y(140), 0)]);
  });
  test('a press picks the nearest food within reach, and nothing in the empty', () => {
    expect(nearestFood(foods, scale, scale.x(80) + 5, scale.y(230) - 5)?.foodId).toBe('b');
    expect(nearestFood(foods, scale, scale.x(160), scale.y(0))).toBeUndefined();
  });
  test('arrow keys walk along energy and along sodium, and stop at the ends', () => {
    expect(nextFood(foods, undefined, 'ArrowRight')?.foodId).toBe('a');
    expect(nextFood(foods, 'a', 'ArrowRight')?.foodId).toBe('b');
    expect(nextFood(foods, 'c', 'ArrowUp')?.foodId).toBe('c');
    expect(nextFood(foods, 'b', 'ArrowDown')?.foodId).toBe('a');
  });
});
