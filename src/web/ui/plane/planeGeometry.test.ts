import { describe, expect, test } from 'vitest';
import { areaUnder, nearestPoint, nextPoint, planeScale } from './planeGeometry.ts';

const points = [
  { key: 'a', x: 50, y: 100 },
  { key: 'b', x: 80, y: 230 },
  { key: 'c', x: 160, y: 900 },
];
const scale = planeScale(
  points,
  [
    { name: 'energy', unit: 'kcal', atLeast: 50 },
    { name: 'sodium', unit: 'mg', atLeast: 100 },
  ],
  500,
  400,
);

describe('the plane', () => {
  test('[WEB-28] every point lies inside the frame, x to the right, y up', () => {
    for (const { x, y } of points) {
      expect(scale.xAt(x)).toBeGreaterThan(0);
      expect(scale.xAt(x)).toBeLessThan(500);
      expect(scale.yAt(y)).toBeGreaterThan(0);
      expect(scale.yAt(y)).toBeLessThan(400);
    }
    expect(scale.xAt(160)).toBeGreaterThan(scale.xAt(50));
    expect(scale.yAt(900)).toBeLessThan(scale.yAt(100));
    expect([scale.xEnd, scale.yEnd]).toEqual([200, 1000]);
  });
  test('[WEB-28] the area under a line ends at the frame, also where the line leaves it', () => {
    const corners = (slope: number, offset: number) =>
      areaUnder({ slope, offset }, scale)
        .split(' ')
        .map(corner => corner.split(',').map(Number));
    for (const [x, y] of corners(1, -40)) {
      expect(x).toBeGreaterThanOrEqual(scale.xAt(0) - 0.1);
      expect(y).toBeLessThanOrEqual(scale.yAt(0) + 0.1);
    }
    // y at most x − 40: the line meets the floor at 40
    expect(corners(1, -40)[1]![0]).toBeCloseTo(scale.xAt(40), 0);
    // y at most 140: a level line
    expect(
      corners(0, 140)
        .slice(0, 2)
        .map(([, y]) => y),
    ).toEqual([expect.closeTo(scale.yAt(140), 0), expect.closeTo(scale.yAt(140), 0)]);
  });
  test('[WEB-28] a press picks the nearest point within reach, and nothing in the empty', () => {
    expect(nearestPoint(points, scale, scale.xAt(80) + 5, scale.yAt(230) - 5)?.key).toBe('b');
    expect(nearestPoint(points, scale, scale.xAt(160), scale.yAt(0))).toBeUndefined();
  });
  test('[WEB-28] arrow keys walk along x and along y, and stop at the ends', () => {
    expect(nextPoint(points, undefined, 'ArrowRight')?.key).toBe('a');
    expect(nextPoint(points, 'a', 'ArrowRight')?.key).toBe('b');
    expect(nextPoint(points, 'c', 'ArrowUp')?.key).toBe('c');
    expect(nextPoint(points, 'b', 'ArrowDown')?.key).toBe('a');
  });
});
