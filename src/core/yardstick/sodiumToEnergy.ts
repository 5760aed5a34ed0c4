import type { Measure } from './yardstick.ts';

/** Whether a measure is sodium in mg against energy in kcal, the one comparison that papers and pictures have words of their own for. */
export function isSodiumToEnergy(measure: Measure): boolean {
  return measure.kind === 'difference' && measure.nutrient === 'sodiumMg' && measure.minus === 'energyKcal';
}
