import { spanText } from '#core/label/figure/spanText.ts';
import type { ReadServing } from '#core/label/serving/readServing.ts';
import { gramsPerAvoirdupoisOunce, labelGramsPerOunce, labelMillilitersPerMeasure } from '#core/quantity/convert.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import type { Finding, HouseholdMeasure } from '../label.ts';

interface Spoon {
  readonly milliliters: number;
  /** Half of the widest step in which the measure is printed (21 CFR 101.9(b)(5)(i)), in measures. */
  readonly halfStep: number;
}

const spoons: Readonly<Record<string, Spoon | undefined>> = {
  cup: { milliliters: labelMillilitersPerMeasure.cup, halfStep: 1 / 8 },
  tablespoon: { milliliters: labelMillilitersPerMeasure.tablespoon, halfStep: 1 / 2 },
  teaspoon: { milliliters: labelMillilitersPerMeasure.teaspoon, halfStep: 1 / 2 },
  'fluid ounce': { milliliters: labelMillilitersPerMeasure['fluid-ounce'], halfStep: 1 / 2 },
};

/** Ounces are printed by halves (21 CFR 101.9(b)(5)(iii)). */
const ounceHalfStep = 1 / 4;

/** Heavier than any food in a spoon or cup: dry salt weighs about 1.3 g per mL, syrup 1.4 (handbook values, from memory). */
const impossibleGPerMl = 2;

/**
 * Household measure against grams and milliliters, only where the law ties them: ounces to grams, spoons and cups to
 * milliliters, each with half of its printed step. Grams in a cup are told only when no food is that heavy.
 */
export function auditServing(serving: ReadServing): readonly Finding[] {
  const { household, grams, milliliters } = serving;
  if (household === undefined) return [];
  const { count, measure } = household;
  if (measure === 'ounce' && grams) {
    const least = (count - ounceHalfStep) * labelGramsPerOunce;
    const most = (count + ounceHalfStep) * gramsPerAvoirdupoisOunce;
    return grams.range.hi < least || grams.range.lo > most
      ? [finding(household, `${grams.printed} g`, spanText({ lo: least, hi: most }, 'g'))]
      : [];
  }
  const spoon = spoons[measure];
  if (spoon === undefined) return [];
  if (milliliters) {
    const least = Math.max(0, count - spoon.halfStep) * spoon.milliliters;
    const most = (count + spoon.halfStep) * spoon.milliliters;
    const apart = milliliters.range.hi < least || milliliters.range.lo > most;
    return apart ? [finding(household, `${milliliters.printed} mL`, spanText({ lo: least, hi: most }, 'mL'))] : [];
  }
  const most = (count + spoon.halfStep) * spoon.milliliters * impossibleGPerMl;
  return grams && grams.range.lo > most
    ? [finding(household, `${grams.printed} g`, `less than ${spanText({ lo: most, hi: most }, 'g')}`)]
    : [];
}

function finding(household: HouseholdMeasure, printed: string, expected: string): Finding {
  const measures = `${roundHalfUp(household.count, 2)} ${household.measure}${household.count > 1 ? 's' : ''}`;
  return {
    code: 'serving-mass-against-measure',
    about: 'serving',
    message: `The serving is printed as ${measures} and as ${printed}; ${measures} would be ${expected}.`,
    source: '21 CFR 101.9(b)(5) and (b)(7): cup 240 mL, tablespoon 15 mL, teaspoon 5 mL, fluid ounce 30 mL, ounce 28 g',
  };
}
