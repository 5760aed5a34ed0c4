import type { PlateFood, Portion } from '#core/plate/plate.ts';
import { portionedAmount } from '#core/plate/plateAmounts.ts';
import { portionFactor, portionGrams, portionMilliliters } from '#core/plate/portionFactor.ts';
import { portionText } from '#core/plate/portionText.ts';
import { type Amount, judgedRange, type Total, unknownReasonText } from '#core/quantity/amount.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { amountText, decimalsOf, shownEnd } from '#core/yardstick/figureText.ts';
import type { Figure } from './guidePage.ts';

/** What readers with kidney disease ask for. */
const told: readonly Nutrient[] = ['energyKcal', 'sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG'];

/** The figures of one portion of a food; what the label does not print is told as unknown, never as zero. */
export function portionFigures(food: PlateFood, portion: Portion): readonly Figure[] {
  const factor = portionFactor(portion, food);
  return told.map(nutrient => amountFigure(nutrient, portionedAmount(food.label.amounts[nutrient], factor)));
}

function amountFigure(nutrient: Nutrient, amount: Amount): Figure {
  if (amount.kind === 'unknown') return { nutrient, text: `${nutrients[nutrient].name}: ${unknownReasonText[amount.reason]}`, cell: '' };
  return rangeFigure(nutrient, judgedRange(amount), amount.source === 'estimated');
}

/** Energy or sodium of the whole plate. */
export function totalFigure(nutrient: Nutrient, { judged, estimated, missing }: Total): Figure {
  if (missing.length > 0) {
    const parts = missing.map(({ of, reason }) => `${of}: ${unknownReasonText[reason]}`).join(', ');
    return { nutrient, text: `${nutrients[nutrient].name} unknown (${parts})`, cell: '' };
  }
  return rangeFigure(nutrient, judged, estimated);
}

function rangeFigure(nutrient: Nutrient, range: Interval, estimated: boolean): Figure {
  const decimals = decimalsOf(nutrient);
  const lo = shownEnd(range, 'lo', decimals);
  const hi = shownEnd(range, 'hi', decimals);
  const cell = lo === hi ? `${lo}` : hi === Number.POSITIVE_INFINITY ? `${lo} or more` : `${lo}–${hi}`;
  return { nutrient, text: `${estimated ? 'estimated ' : ''}${amountText(nutrient, range, decimals)}`, cell };
}

/** A portion as readers measure it: "4 slices (56 g)", "1/4 cup (60 mL)"; "1 serving" where the label says no more. */
export function portionWords(food: PlateFood, portion: Portion): string {
  const { household, servings } = food.label.amountsFor;
  const counted =
    'servings' in portion && household !== undefined && servings
      ? { measure: household.measure, count: (household.count * portion.servings) / servings }
      : portion;
  const words = portionText(counted);
  const grams = portionGrams(portion, food);
  const milliliters = portionMilliliters(portion, food);
  if ('grams' in counted || 'milliliters' in counted) return words;
  if (grams !== undefined) return `${words} (${portionText({ grams })})`;
  return milliliters === undefined ? words : `${words} (${portionText({ milliliters })})`;
}
