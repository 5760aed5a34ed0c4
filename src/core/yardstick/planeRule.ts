import type { Plate } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { factsOf, isNumberMeasure } from './measures/measureFacts.ts';
import type { Measure, Test } from './yardstick.ts';

/** The most sodium (mg) that a portion of some energy (kcal) may hold: slope × energy + offset; over by no more than slack is nearly. */
export interface PlaneRule {
  readonly slope: number;
  readonly offset: number;
  readonly slack: number;
}

/**
 * The line that a yardstick draws on the plane of energy and sodium, for the portion alone: what the companions bring is
 * in the offset. Bread of 160 kcal and 20 mg under "sodium no more than energy" gives slope 1 and offset 140.
 * Null when no test compares sodium with energy or with a number, or when a companion's amount is unknown.
 */
export function planeRule(tests: readonly Test[], plate: Plate): PlaneRule | null {
  for (const { measure, basis, atMost, slack = 0 } of tests) {
    if (atMost === undefined || (basis !== 'on-plate' && basis !== 'as-eaten')) continue;
    const companions = basis === 'on-plate' ? plate.companions : [];
    const line = lineOf(measure, atMost);
    const sodium = plateTotal(companions, 'sodiumMg');
    const energy = plateTotal(companions, 'energyKcal');
    if (line === undefined || sodium.missing.length > 0 || (line.takesEnergyOff && energy.missing.length > 0)) continue;
    return {
      slope: line.slope,
      offset: line.offset + line.slope * energy.judged.lo - sodium.judged.hi,
      slack: line.isInMg ? slack : 0,
    };
  }
  return null;
}

interface SodiumLine {
  readonly slope: number;
  readonly offset: number;
  readonly takesEnergyOff: boolean;
  /** Whether bound and slack are mg of sodium. */
  readonly isInMg: boolean;
}

/** The line of a measure that is sodium, whole, with nothing or energy taken off it. */
function lineOf(measure: Measure, atMost: number): SodiumLine | undefined {
  if (!isNumberMeasure(measure)) return undefined;
  const { unit, linear } = factsOf(measure);
  const { terms, limit } = linear(atMost);
  const [sodium, energy, ...more] = terms;
  if (sodium?.nutrient !== 'sodiumMg' || sodium.isTakenOff || sodium.weight !== 1 || more.length > 0) return undefined;
  if (energy !== undefined && (energy.nutrient !== 'energyKcal' || !energy.isTakenOff)) return undefined;
  return { slope: energy?.weight ?? 0, offset: limit, takesEnergyOff: energy !== undefined, isInMg: unit === nutrients.sodiumMg.unit };
}
