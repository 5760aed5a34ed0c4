import { describe, expect, it } from 'vitest';
import { trendScale } from './trendScale.ts';

const points = [
  { day: '2026-01-01', value: 4 },
  { day: '2026-01-11', value: 6 },
  { day: '2026-01-21', value: 5 },
];

describe('where the points of a trend stand', () => {
  it('days and values stand in proportion', () => {
    const { least, most, across, up } = trendScale(points, []);
    expect([least, most]).toEqual([4, 6]);
    expect(points.map(({ day }) => across(day))).toEqual([0, 0.5, 1]);
    expect(points.map(({ value }) => up(value))).toEqual([0, 1, 0.5]);
  });

  it('the ends of a band are in sight; one without an end, or from nothing, leaves the points their room', () => {
    expect(trendScale(points, [[3, 5]])).toMatchObject({ least: 3, most: 6 });
    expect(trendScale(points, [[0, 8]])).toMatchObject({ least: 4, most: 8 });
    const open = trendScale(points, [[5, null]]);
    expect([open.least, open.most]).toEqual([4, 6]);
    expect(trendScale(points, [[0, 8]]).up(0)).toBe(0);
  });

  it('one day, or one value, stands in the middle', () => {
    const { across, up } = trendScale([points[0]!], []);
    expect([across('2026-01-01'), up(4)]).toEqual([0.5, 0.5]);
  });
});
