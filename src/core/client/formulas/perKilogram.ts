import { type Interval, interval } from '#core/quantity/interval.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { type Computed, computed, firstImpossible, refuse, weightKgInput } from './computed.ts';

/**
 * A day's energy (kcal) or protein (g) from a range per kg and the chosen weight. 70 kg at 0.55 to 0.60 g/kg is 38.5 to 42.0 g;
 * at 1.0 to 1.2 g/kg it is 70.0 to 84.0 g. An open upper end stays open. Binary dust is removed, nothing is rounded.
 */
export function perDayFromPerKg(perKg: Interval, weightKg: number): Computed<Interval> {
  return (
    firstImpossible(weightKgInput(weightKg), ['per kg', perKg.lo, 0, 100, 'a day']) ??
    (perKg.lo > perKg.hi
      ? refuse('impossible', 'to', `The upper end ${perKg.hi} is below the lower end ${perKg.lo}: expected at least as much.`)
      : undefined) ??
    computed(interval(cleanFloat(perKg.lo * weightKg), cleanFloat(perKg.hi * weightKg)))
  );
}
