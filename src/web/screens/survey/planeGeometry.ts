/** Where foods stand on the plane: energy across, sodium up. Pure, so that it can be checked without a browser. */

export interface Point {
  readonly foodId: string;
  readonly energyKcal: number;
  readonly sodiumMg: number;
}

export interface PlaneScale {
  readonly width: number;
  readonly height: number;
  readonly xMax: number;
  readonly yMax: number;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly x: (energyKcal: number) => number;
  readonly y: (sodiumMg: number) => number;
}

const margin = { left: 48, right: 14, top: 18, bottom: 34 } as const;

/** Scales from zero to a round number above the largest point and the line. */
export function planeScale(points: readonly Pick<Point, 'energyKcal' | 'sodiumMg'>[], width: number, height: number): PlaneScale {
  let mostEnergy = 50;
  let mostSodium = 100;
  for (const { energyKcal, sodiumMg } of points) {
    if (energyKcal > mostEnergy) mostEnergy = energyKcal;
    if (sodiumMg > mostSodium) mostSodium = sodiumMg;
  }
  const xStep = roundStep(mostEnergy / 6);
  const yStep = roundStep(mostSodium / 5);
  const xMax = Math.ceil((mostEnergy * 1.04) / xStep) * xStep;
  const yMax = Math.ceil((mostSodium * 1.04) / yStep) * yStep;
  return {
    width,
    height,
    xMax,
    yMax,
    xTicks: ticks(xMax, xStep),
    yTicks: ticks(yMax, yStep),
    x: energyKcal => margin.left + (energyKcal / xMax) * (width - margin.left - margin.right),
    y: sodiumMg => height - margin.bottom - (sodiumMg / yMax) * (height - margin.top - margin.bottom),
  };
}

/**
 * 1, 2 or 5 times a power of ten, at least as large as asked: 37 gives 50.
 *
 * @internal
 */
export function roundStep(atLeast: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(atLeast, 1)));
  return [1, 2, 5, 10].map(times => times * power).find(step => step >= atLeast) ?? 10 * power;
}

function ticks(most: number, step: number): number[] {
  return Array.from({ length: Math.round(most / step) + 1 }, (_, index) => index * step);
}

/** The area that a line slope × energy + offset leaves below it, as the corners of a polygon inside the plane. */
export function areaUnder({ slope, offset }: { readonly slope: number; readonly offset: number }, scale: PlaneScale): string {
  const at = (energy: number): number => Math.min(scale.yMax, Math.max(0, slope * energy + offset));
  // Where the line meets the floor or the ceiling of the plane it bends: those corners belong to the polygon.
  const bends = slope === 0 ? [] : [-offset / slope, (scale.yMax - offset) / slope].filter(energy => energy > 0 && energy < scale.xMax);
  const energies = [0, ...bends.sort((a, b) => a - b), scale.xMax];
  const corners = energies.map(energy => [scale.x(energy), scale.y(at(energy))] as const);
  return [...corners, [scale.x(scale.xMax), scale.y(0)], [scale.x(0), scale.y(0)]]
    .map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ');
}

/** The food nearest to a place on the screen, within reach of a finger. */
export function nearestFood(points: readonly Point[], scale: PlaneScale, x: number, y: number, reach = 22): Point | undefined {
  let nearest: Point | undefined;
  let least = reach * reach;
  for (const point of points) {
    const distance = (scale.x(point.energyKcal) - x) ** 2 + (scale.y(point.sodiumMg) - y) ** 2;
    if (distance <= least) {
      least = distance;
      nearest = point;
    }
  }
  return nearest;
}

/** The next food for an arrow key: along energy for left and right, along sodium for up and down. */
export function nextFood(
  points: readonly Point[],
  from: string | undefined,
  key: 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown',
): Point | undefined {
  const across = key === 'ArrowLeft' || key === 'ArrowRight';
  const order = [...points].sort(
    (a, b) =>
      (across ? a.energyKcal - b.energyKcal || a.sodiumMg - b.sodiumMg : a.sodiumMg - b.sodiumMg || a.energyKcal - b.energyKcal) ||
      a.foodId.localeCompare(b.foodId),
  );
  const at = order.findIndex(({ foodId }) => foodId === from);
  if (at < 0) return order[0];
  return order[at + (key === 'ArrowRight' || key === 'ArrowUp' ? 1 : -1)] ?? order[at];
}
