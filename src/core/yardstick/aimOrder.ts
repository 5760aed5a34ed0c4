import { countedClasses } from '#core/additive/countedClasses.ts';
import type { AimedAmount, ClientAim, Criterion } from '#core/client/aims/clientAims.ts';
import { fluidOf, fluidOnPlate } from '#core/plate/fluid.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { type Interval, scale } from '#core/quantity/interval.ts';
import type { UnsafeFood } from './foodSafety.ts';
import { comparedRange } from './served.ts';

/** A food on its usual plate. */
export interface AimedFood {
  readonly food: PlateFood;
  readonly plate: Plate;
  readonly category?: string | undefined;
  readonly unsafe?: UnsafeFood | undefined;
  readonly useEstimates: boolean;
}

/**
 * Amounts within one step are alike, so that the next aim has a say: a difference of a bite decides nothing (own decision). Phosphorus and potassium by
 * a fourth of the 100 mg that kidney facts 7.1 call low, fluid by the quarter cup.
 */
const steps: Readonly<Record<AimedAmount, number>> = { potassiumMg: 25, phosphorusMg: 25, energyKcal: 50, proteinG: 2, fluidMl: 60 };

/** Where a food stands in the order of the aims: lower comes first, criterion by criterion. What is not known stands last, and is never counted as 0. */
export function aimRank(aims: readonly ClientAim[], aimed: AimedFood): readonly number[] {
  return aims.flatMap(({ criteria }) => criteria.map(one => rankBy(one, aimed)));
}

/** Compares two ranks; 0 where no aim tells them apart. */
export function byAimRank(a: readonly number[], b: readonly number[]): number {
  for (const [at, rank] of a.entries()) {
    const other = b[at]!;
    if (rank !== other) return rank < other ? -1 : 1;
  }
  return 0;
}

/** The amounts that foods are picked by, and that this food's label does not tell. */
export function notToldOfAims(aims: readonly ClientAim[], aimed: AimedFood): readonly AimedAmount[] {
  const wanted = new Set(aims.flatMap(({ criteria }) => criteria.flatMap(one => (one.kind === 'amount' ? [one.of] : []))));
  return [...wanted].filter(of => amountIn(of, aimed) === undefined);
}

/**
 * What the portion has of it, as a test would compare it; undefined where it is not known. Fluid is that of the whole plate: a cereal is eaten with its milk.
 * What a plate's companions have of anything else is the same for every food on it.
 */
export function amountIn(of: AimedAmount, { food, plate, category, useEstimates }: AimedFood): Interval | undefined {
  if (of === 'fluidMl') {
    const fluid = fluidOnPlate(plate, food, category);
    if (fluid.kind === 'not-known') return undefined;
    const milliliters = fluid.kind === 'none' ? 0 : fluid.milliliters;
    return { lo: milliliters, hi: milliliters };
  }
  const factor = portionFactor(plate.portion, food);
  const range = comparedRange(food.label.amounts[of], useEstimates);
  return range === undefined || typeof factor !== 'number' ? undefined : scale(range, factor);
}

/** The least that the food itself brings of it, rounding of the print counted: a printed 15 g of protein is 14.5 g and more. Undefined where it is not known. */
export function leastIn(of: AimedAmount, aimed: AimedFood): number | undefined {
  if (of === 'fluidMl') {
    const fluid = fluidOf(aimed.food, aimed.plate.portion, aimed.category);
    return fluid.kind === 'fluid' ? fluid.milliliters : undefined;
  }
  if (amountIn(of, aimed) === undefined) return undefined;
  const amount = aimed.food.label.amounts[of];
  const factor = portionFactor(aimed.plate.portion, aimed.food);
  return amount.kind === 'known' && typeof factor === 'number' ? amount.range.lo * factor : undefined;
}

/** A most counts at its high end and a need at its low end: the end that is not on the client's side. */
function rankBy(criterion: Criterion, aimed: AimedFood): number {
  if (criterion.kind === 'safe-as-eaten') return aimed.unsafe === undefined ? 0 : 1;
  if (criterion.kind === 'no-additive') return additiveRank(criterion.class, aimed.food);
  const range = amountIn(criterion.of, aimed);
  if (range === undefined) return Number.POSITIVE_INFINITY;
  const step = steps[criterion.of];
  return criterion.wanted === 'least' ? Math.floor(range.hi / step + 1e-9) : -Math.floor(range.lo / step + 1e-9);
}

function additiveRank(kind: 'phosphate' | 'potassium', { label }: PlateFood): number {
  const found = countedClasses(label.additives).find(one => one.class === kind);
  if (found !== undefined) return found.isCertain ? 2 : 1;
  return label.statement === undefined ? Number.POSITIVE_INFINITY : 0;
}
