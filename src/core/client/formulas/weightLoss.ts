import { type Computed, computed, firstImpossible, weightKgInput } from './computed.ts';

/** Weight loss in percent of usual weight; negative is gain. From 80 to 72 kg is 10 %. By definition. */
export function weightLossPercent(usualKg: number, currentKg: number): Computed {
  return (
    firstImpossible(weightKgInput(usualKg, 'usualKg'), weightKgInput(currentKg, 'currentKg')) ??
    computed(((usualKg - currentKg) / usualKg) * 100)
  );
}
