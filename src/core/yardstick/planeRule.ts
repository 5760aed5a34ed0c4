import type { Plate } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import type { Test } from './yardstick.ts';

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
    const sodium = plateTotal(companions, 'sodiumMg');
    const energy = plateTotal(companions, 'energyKcal');
    if (sodium.missing.length > 0) continue;
    if (measure.kind === 'nutrient' && measure.nutrient === 'sodiumMg') return { slope: 0, offset: atMost - sodium.judged.hi, slack };
    if (energy.missing.length > 0) continue;
    if (measure.kind === 'difference' && measure.nutrient === 'sodiumMg' && measure.minus === 'energyKcal') {
      return { slope: 1, offset: atMost + energy.judged.lo - sodium.judged.hi, slack };
    }
    if (measure.kind === 'ratio' && measure.nutrient === 'sodiumMg' && measure.per === 'energyKcal') {
      return { slope: atMost, offset: atMost * energy.judged.lo - sodium.judged.hi, slack: 0 };
    }
  }
  return null;
}
