import type { Plate, PlateFood, Portion } from '#core/plate/plate.ts';
import { portionFactor, portionGrams } from '#core/plate/portionFactor.ts';
import { portionText } from '#core/plate/portionText.ts';
import { largestByScale, largestInMeasures } from '#core/plate/wholeMeasures.ts';
import type { Candidate } from './wayIn.ts';

/** A way in leaves at least this share of the portion on the plate: less is another meal, not a smaller portion (own decision). */
export const smallestShare = 1 / 4;

/** The largest portion up to `share` of the plate's own, in the label's household measure and by scale. */
export function portionWays(food: PlateFood, plate: Plate, factor: number, share: number): readonly Candidate[] {
  return [largestInMeasures(food, factor * share), largestByScale(food, factor * share)].flatMap(portion => {
    const left = portion && portionFactor(portion, food);
    if (portion === undefined || typeof left !== 'number') return [];
    const kept = left / factor;
    if (kept < smallestShare || kept >= 1) return [];
    const action = `${portionText(portion)} instead of ${oldPortionText(food, plate.portion, portion)}`;
    return [{ kind: 'smaller-portion' as const, action, plate: { ...plate, portion }, change: 1 - kept }];
  });
}

function oldPortionText(food: PlateFood, old: Portion, changed: Portion): string {
  const grams = 'grams' in changed && !('grams' in old) ? portionGrams(old, food) : undefined;
  return grams === undefined ? portionText(old) : `${portionText(old)} (${portionText({ grams })})`;
}
