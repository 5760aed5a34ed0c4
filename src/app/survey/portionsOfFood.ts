import type { Plate, PlateFood, Portion } from '#core/plate/plate.ts';
import { portionGrams } from '#core/plate/portionFactor.ts';
import { portionText } from '#core/plate/portionText.ts';
import { scalePortion } from '#core/plate/scalePortion.ts';
import { judgePlate, testsJudged } from '#core/yardstick/judgePlate.ts';
import { largestShareThatFits, noPortionChanges, waysIn } from '#core/yardstick/waysIn.ts';
import type { Setting, Yardstick } from '#core/yardstick/yardstick.ts';

/** Steps of the portion slider: from a sixteenth of the plate's portion to twice as much. */
const steps = 32;

/** How much of a food fits: the verdict over the portion, the largest portion that fits, and ways in for the plate's own. */
export function portionsOfFood(input: {
  readonly food: PlateFood;
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  readonly switchedOn: readonly string[];
  readonly shelf: { readonly foods: readonly PlateFood[]; readonly plates: readonly Plate[] };
}) {
  const { food, plate, shelf } = input;
  const whole = portionGrams(plate.portion, food);
  const amount = (share: number): Portion =>
    whole === undefined ? scalePortion(plate.portion, share) : { grams: Math.round(whole * share * 10) / 10 };
  const list = Array.from({ length: steps }, (_, index) => {
    const portion = amount((2 * (index + 1)) / steps);
    const { verdict, closeCall, why } = judgePlate({ ...input, plate: { ...plate, portion } });
    return { grams: 'grams' in portion ? portion.grams : index + 1, text: portionText(portion), verdict, closeCall, why };
  });
  // The closed form looks at shares of one portion: asked of the double portion, it sees past the plate's own.
  const most = largestShareThatFits({ ...input, plate: { ...plate, portion: scalePortion(plate.portion, 2) } }) * 2;
  const grams = whole === undefined ? null : Math.floor(whole * most + 1e-9);
  const own = waysIn(input.setting === undefined ? { ...input, shelf } : { ...input, shelf });
  const settled = noPortionChanges(testsJudged(input.yardstick, input.switchedOn), plate, judgePlate({ ...input, plate }));
  return {
    steps: list,
    ...(settled === undefined ? {} : { noPortion: { testId: settled.testId, verdict: settled.verdict, why: settled.why } }),
    tippingGrams: most > 0 && most < 2 ? grams : null,
    tippingText: settled === undefined ? tippingText(most, grams) : 'No portion changes this.',
    waysIn: own.ways.map(({ kind, what }) => ({ kind, what })),
  };
}

function tippingText(most: number, grams: number | null): string {
  if (most <= 0 || (grams !== null && grams < 1)) return 'No portion of it fits on this plate.';
  if (most >= 2) return 'Twice the portion still fits.';
  return grams === null ? `At most ${Math.floor(most * 100)} % of the portion fits.` : `${grams} g is the most that fits.`;
}
