import { ticksTo } from '../scale.ts';

/** Where points stand on a plane that begins at zero. Pure, so that it can be checked without a browser. */

export interface Place {
  readonly key: string;
  readonly x: number;
  readonly y: number;
}

/** What a side of the plane shows; it reaches at least to `atLeast`, so that a few small points do not fill it. */
export interface Axis {
  readonly name: string;
  readonly unit: string;
  readonly atLeast: number;
}

/** y = slope × x + offset */
export interface Line {
  readonly slope: number;
  readonly offset: number;
}

export interface PlaneScale {
  readonly width: number;
  readonly height: number;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly xEnd: number;
  readonly yEnd: number;
  readonly xAt: (x: number) => number;
  readonly yAt: (y: number) => number;
}

const margin = { left: 48, right: 14, top: 28, bottom: 34 } as const;
/** The outermost point keeps off the frame. */
const room = 1.04;

/** Scales from zero to a round number above the largest point. */
export function planeScale(
  points: readonly Pick<Place, 'x' | 'y'>[],
  [across, up]: readonly [across: Axis, up: Axis],
  width: number,
  height: number,
): PlaneScale {
  let xMost = across.atLeast;
  let yMost = up.atLeast;
  for (const { x, y } of points) {
    if (x > xMost) xMost = x;
    if (y > yMost) yMost = y;
  }
  const xTicks = ticksTo(xMost * room, 6);
  const yTicks = ticksTo(yMost * room, 5);
  const xEnd = xTicks.at(-1)!;
  const yEnd = yTicks.at(-1)!;
  return {
    width,
    height,
    xTicks,
    yTicks,
    xEnd,
    yEnd,
    xAt: x => margin.left + (x / xEnd) * (width - margin.left - margin.right),
    yAt: y => height - margin.bottom - (y / yEnd) * (height - margin.top - margin.bottom),
  };
}

/** The area that a line leaves below it, as the corners of a polygon inside the plane: first those on the line, then the two of the floor. */
export function areaUnder({ slope, offset }: Line, scale: PlaneScale): string {
  const at = (x: number): number => Math.min(scale.yEnd, Math.max(0, slope * x + offset));
  // Where the line meets the floor or the ceiling of the plane it bends: those corners belong to the polygon.
  const bends = slope === 0 ? [] : [-offset / slope, (scale.yEnd - offset) / slope].filter(x => x > 0 && x < scale.xEnd);
  const line = [0, ...bends.sort((a, b) => a - b), scale.xEnd].map(x => [scale.xAt(x), scale.yAt(at(x))] as const);
  return [...line, [scale.xAt(scale.xEnd), scale.yAt(0)], [scale.xAt(0), scale.yAt(0)]]
    .map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ');
}

/** The point nearest to a place on the screen, within reach of a finger. */
export function nearestPoint<Point extends Place>(
  points: readonly Point[],
  scale: PlaneScale,
  x: number,
  y: number,
  reach = 22,
): Point | undefined {
  let nearest: Point | undefined;
  let least = reach * reach;
  for (const point of points) {
    const distance = (scale.xAt(point.x) - x) ** 2 + (scale.yAt(point.y) - y) ** 2;
    if (distance <= least) {
      least = distance;
      nearest = point;
    }
  }
  return nearest;
}

export type ArrowKey = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

export function isArrowKey(key: string): key is ArrowKey {
  return key === 'ArrowLeft' || key === 'ArrowRight' || key === 'ArrowUp' || key === 'ArrowDown';
}

/** The next point for an arrow key: along x for left and right, along y for up and down. */
export function nextPoint<Point extends Place>(points: readonly Point[], from: string | undefined, key: ArrowKey): Point | undefined {
  const isAcross = key === 'ArrowLeft' || key === 'ArrowRight';
  const order = [...points].sort((a, b) => (isAcross ? a.x - b.x || a.y - b.y : a.y - b.y || a.x - b.x) || a.key.localeCompare(b.key));
  const at = order.findIndex(point => point.key === from);
  if (at < 0) return order[0];
  return order[at + (key === 'ArrowRight' || key === 'ArrowUp' ? 1 : -1)] ?? order[at];
}
