import { type ClientRecord, evenPattern, foodsToAvoid } from '#core/client/record.ts';
import type { Plate } from '#core/plate/plate.ts';
import { portionText } from '#core/plate/portionText.ts';
import { floorTo } from '#core/quantity/rounding.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { ShelfFood } from '../shelf.ts';
import { surveyForScreen } from '../surveyForScreen.ts';

export interface FitsInput {
  readonly record: ClientRecord;
  readonly foods: readonly ShelfFood[];
  readonly plate: Plate;
  /** A meal of the client's pattern. */
  readonly meal: string;
  readonly useEstimates: boolean;
}

/**
 * The shelf judged for one client by the signed prescription: each food on the plate against a meal's share of the day, how
 * much of it fits in that meal and in a day, and what has to be asked because the label does not tell.
 */
export function whatFits({ record, foods, plate, meal, useEstimates }: FitsInput) {
  const [prescription] = record.prescriptions;
  const pattern = record.mealPattern ?? evenPattern;
  const share = pattern.find(({ name }) => name === meal) ?? pattern[0]!;
  const avoidedFoods = foodsToAvoid(record);
  const bounds = { targets: prescription?.targets ?? [], avoidedFoods, useEstimates };
  const mealYardstick = clientYardstick({ ...bounds, percent: share.percent, meal: share.name });
  const dayYardstick = clientYardstick({ ...bounds, percent: 100, meal: 'the day' });
  if (prescription === undefined || mealYardstick.tests.length === 0) {
    return {
      meal: share.name,
      tests: [],
      rows: [],
      toAsk: [],
      none:
        prescription === undefined
          ? 'Nothing is signed yet: sign a prescription to see what fits.'
          : 'The signed prescription bounds no food from above.',
    };
  }
  const survey = surveyForScreen({ foods, plate, yardstick: mealYardstick, switchedOn: [] });
  const byId = new Map(foods.map(one => [one.row.id, one]));
  const rows = survey.rows.map(row => {
    const { food } = byId.get(row.foodId)!;
    const most = (yardstick: typeof mealYardstick): string => shareText(largestShareThatFits({ food, plate, yardstick }), plate);
    // No portion makes a named additive or an avoided food go away.
    const isNamed = row.verdict === 'over' && row.margin.includes('named');
    const amount = (yardstick: typeof mealYardstick): string =>
      isNamed ? 'none' : row.verdict === "can't tell" ? 'not known' : most(yardstick);
    return {
      foodId: row.foodId,
      name: row.name,
      ...(row.maker === undefined ? {} : { maker: row.maker }),
      verdict: row.verdict,
      closeCall: row.closeCall,
      estimated: row.estimated,
      why: row.margin,
      inMeal: amount(mealYardstick),
      inDay: amount(dayYardstick),
    };
  });
  return {
    meal: share.name,
    tests: mealYardstick.tests.map(({ source }) => source.text),
    rows,
    toAsk: rows
      .filter(({ verdict }) => verdict === "can't tell")
      .map(({ name, maker, why }) => `${name}${maker === undefined ? '' : `, ${maker}`}: ${why}`),
  };
}

/** The closed form's share of the plate's portion, in words, never more than the portion itself. */
function shareText(share: number, plate: Plate): string {
  if (share <= 0) return 'none';
  if (share >= 1) return portionText(plate.portion);
  return `${floorTo(share * 100, 0)}% of ${portionText(plate.portion)}`;
}
