import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { estimateMinerals } from '#core/recipe/estimateMinerals.ts';
import type { MineralEstimate, MineralRange } from '#core/recipe/minerals.ts';
import { type KnownFood, knownFoods } from './knownRecipes/knownFoods.ts';
import { figure } from './measure.ts';

/** Every sixth pair of recipes was looked at while the model was tuned; the others are held out. */
export function isTuning(_food: KnownFood, index: number): boolean {
  return Math.floor(index / 2) % 6 === 5;
}

interface Outcome {
  readonly food: KnownFood;
  readonly estimate: MineralEstimate;
  readonly ms: number;
}

/** The four accuracy figures of the mineral estimates on foods of known recipe, beside the plain rule, and the time. */
export async function benchMinerals(): Promise<void> {
  const foods = knownFoods().filter((food, at) => !isTuning(food, at));
  const solver = await openHighsSolver();
  const outcomes: Outcome[] = [];
  let unbounded = 0;
  for (const food of foods) {
    const label = readLabel(
      labelFromJson({
        name: food.id,
        serving: { household: food.household, grams: food.servingG },
        panel: food.panel,
        statement: food.statement,
      }).value!,
    );
    const start = performance.now();
    const estimate = estimateMinerals(label, solver);
    const ms = performance.now() - start;
    if (estimate.kind === 'estimate') outcomes.push({ food, estimate, ms });
    else unbounded += 1;
  }
  figure(`foods of known recipe; in no rate: ${unbounded} that cannot be bounded`, foods.length, 'at least 300');
  report(
    'phosphorus',
    outcomes,
    ({ estimate }) => estimate.phosphorus,
    ({ truth }) => truth.phosphorusMg,
  );
  report(
    'potassium',
    outcomes,
    ({ estimate }) => estimate.potassium,
    ({ truth }) => truth.potassiumMg,
  );
  report(
    'added phosphorus',
    outcomes,
    ({ estimate }) => estimate.addedPhosphorus,
    ({ truth }) => truth.addedPhosphorusMg,
  );
  const plain = outcomes.map(({ food }) => Math.abs(14 * proteinOf(food) - food.truth.phosphorusMg));
  const own = outcomes.map(({ food, estimate }) => Math.abs(estimate.phosphorus.likely.mid - food.truth.phosphorusMg));
  figure('phosphorus: median error over that of 14 mg per g protein', median(own) / median(plain), 'at most 0.4');
  figure('labels in conflict with the model, share', share(outcomes, ({ estimate }) => estimate.conflicts.length > 0).rate, '');
  const times = outcomes.map(({ ms }) => ms).sort((a, b) => a - b);
  figure('one label, bounds and draws, median, milliseconds', times[Math.floor(times.length / 2)]!, 'under 60');
  figure('  slowest', times.at(-1)!, '');
}

function proteinOf({ panel }: KnownFood): number {
  const printed = panel.proteinG ?? 0;
  return typeof printed === 'number' ? printed : 0.75;
}

function report(
  name: string,
  outcomes: readonly Outcome[],
  of: (outcome: Outcome) => MineralRange,
  truthOf: (food: KnownFood) => number,
): void {
  const rows = outcomes.map(outcome => ({ kind: outcome.food.kind, range: of(outcome), truth: truthOf(outcome.food) }));
  const rate = (what: string, aim: string, holds: (row: (typeof rows)[number]) => boolean): void => {
    const { rate: value, from, to } = share(rows, holds);
    figure(`${name}: ${what} (95 % interval ${from.toFixed(3)} to ${to.toFixed(3)})`, value, aim);
  };
  rate('sure range holds the truth', 'at least 0.97', ({ range: { sure }, truth }) => truth >= sure.lo - 1e-6 && truth <= sure.hi + 1e-6);
  const widths = rows.map(({ range: { sure }, truth }) => (sure.hi - sure.lo) / Math.max(truth, 15));
  figure(`${name}: median width of the sure range over the truth`, median(widths), 'at most 0.75');
  rate('90 % range holds the truth', '0.85 to 0.95', ({ range: { likely }, truth }) => truth >= likely.lo && truth <= likely.hi);
  rate('likely value within 25 % or 15 mg', 'at least 0.8', isNear);
  for (const [kind, own] of Map.groupBy(rows, row => row.kind)) {
    process.stdout.write(
      `    ${kind.padEnd(28)} ${own.length} foods: sure ${percent(own, ({ range: { sure }, truth }) => truth >= sure.lo - 1e-6 && truth <= sure.hi + 1e-6)}, ` +
        `90 % range ${percent(own, ({ range: { likely }, truth }) => truth >= likely.lo && truth <= likely.hi)}, near ${percent(own, isNear)}, ` +
        `width ${median(own.map(({ range: { sure }, truth }) => (sure.hi - sure.lo) / Math.max(truth, 15))).toFixed(2)}\n`,
    );
  }
}

function isNear({ range: { likely }, truth }: { readonly range: MineralRange; readonly truth: number }): boolean {
  return Math.abs(likely.mid - truth) <= Math.max(0.25 * truth, 15);
}

/** A rate with its 95 % interval (Wilson 1927). */
function share<Row>(
  rows: readonly Row[],
  holds: (row: Row) => boolean,
): { readonly rate: number; readonly from: number; readonly to: number } {
  const n = rows.length;
  const rate = rows.filter(holds).length / n;
  const z = 1.959964;
  const middle = (rate + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z * Math.sqrt((rate * (1 - rate)) / n + (z * z) / (4 * n * n))) / (1 + (z * z) / n);
  return { rate, from: middle - half, to: middle + half };
}

function percent<Row>(rows: readonly Row[], holds: (row: Row) => boolean): string {
  return `${Math.round(100 * share(rows, holds).rate)} %`;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
