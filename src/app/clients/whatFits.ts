import { marginOf } from '#app/survey/surveyForScreen.ts';
import { type ClientRecord, evenPattern, type MealShare } from '#core/client/record/record.ts';
import type { Plate } from '#core/plate/plate.ts';
import { portionText } from '#core/plate/portionText.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { floorTo } from '#core/quantity/rounding.ts';
import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { seldomPrinted } from '#core/yardstick/byLabel.ts';
import { type ClientReason, reasonText } from '#core/yardstick/clientReason.ts';
import { kinTitle } from '#core/yardstick/ingredientKin.ts';
import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import type { ShelfFood } from '../shelf.ts';
import { type JudgedForClient, judgeForClient } from './judgeForClient.ts';
import { whatIsForbidden } from './whatIsForbidden.ts';

export interface FitsInput {
  readonly record: ClientRecord;
  readonly foods: readonly ShelfFood[];
  readonly plate: Plate;
  /** A meal of the client's pattern. */
  readonly meal: string;
  readonly useEstimates: boolean;
  readonly today: Day;
}

/**
 * The shelf judged for one client by the signed prescription: each food on the plate against a meal's share of the day, how
 * much of it fits in that meal and in a day, and what has to be asked because the label does not tell.
 */
export function whatFits({ record, foods, plate, meal, useEstimates, today }: FitsInput) {
  const [prescription] = record.prescriptions;
  const pattern = record.mealPattern ?? evenPattern;
  const share = pattern.find(({ name }) => name === meal) ?? pattern[0]!;
  const forbidden = whatIsForbidden(record, today);
  const categorized = foods.map(({ row: { category }, food }) => (category === undefined ? { food } : { food, category }));
  const client = judgeForClient(categorized, { ...forbidden, targets: prescription?.targets ?? [], useEstimates, meal: share, plate });
  if (prescription === undefined || client.yardstick.tests.length === 0) {
    return {
      meal: share.name,
      tests: [],
      notTold: [],
      rows: [],
      toAsk: [],
      none:
        prescription === undefined
          ? 'Nothing is signed yet: sign a prescription to see what fits.'
          : 'The signed prescription bounds no food from above.',
    };
  }
  const judged = foods.map(({ row }, at) => ({ row, judged: client.foods[at]! }));
  return {
    meal: share.name,
    tests: client.yardstick.tests.map(test => testWords(test, client.dayYardstick, share)),
    notTold: seldomPrinted.flatMap(mineral => {
      const count = judged.filter(one => one.judged.notTold.includes(mineral)).length;
      if (count === 0) return [];
      const words = `${mineral} could not be told for ${count} of ${foods.length} ${foods.length === 1 ? 'food' : 'foods'}; judged by additives`;
      return [{ mineral, foods: count, of: foods.length, words }];
    }),
    rows: judged.map(one => fitsRow(one.row, one.judged, plate)),
    toAsk: judged
      .filter(one => one.judged.offer === 'ask')
      .map(
        ({ row: { name, maker }, judged: { reasons } }) => `${name}${maker === undefined ? '' : `, ${maker}`}: ${reasonText(reasons[0]!)}`,
      ),
  };
}

function fitsRow(row: ShelfFood['row'], judged: JudgedForClient, plate: Plate) {
  const { offer, reasons, verdict, yardstick, notTold, unsafe, shareOfMeal, shareOfDay } = judged;
  const isBarred = offer === 'never' || offer === 'ask';
  const amount = (share: number): string => (offer === 'never' ? 'none' : offer === 'ask' ? 'ask first' : shareText(share, plate));
  return {
    foodId: row.id,
    name: row.name,
    ...(row.maker === undefined ? {} : { maker: row.maker }),
    offer,
    // Raw sprouts keep every number, and are not for this client all the same.
    verdict: offer === 'never' ? ('over' as const) : verdict.verdict,
    closeCall: verdict.closeCall,
    estimated: verdict.estimated,
    why: isBarred ? reasonText(reasons[0]!) : marginOf(verdict, yardstick),
    // How to eat it is no word for what is not to be eaten.
    marks:
      offer === 'never'
        ? []
        : [
            ...(unsafe?.rule === 'heat' ? [`${unsafe.line.en}.`] : []),
            ...notTold.map(mineral =>
              verdict.verdict === 'fits' && offer !== 'ask'
                ? `Fits by what the label tells; ${mineral} not known.`
                : `${upper(mineral)} not known.`,
            ),
          ],
    reasons: reasons.map(told),
    inMeal: amount(shareOfMeal),
    inDay: amount(shareOfDay),
  };
}

function told(reason: ClientReason) {
  return {
    kind: reason.kind,
    ...('testId' in reason ? { testId: reason.testId } : {}),
    ...('kin' in reason ? { kin: reason.kin } : {}),
    ...('presence' in reason ? { presence: reason.presence } : {}),
    text: reasonText(reason),
  };
}

/** A meal's share is for the whole plate, not for one food. */
function testWords(test: Test, { tests }: Yardstick, { name, percent }: MealShare): string {
  const { measure } = test;
  if (measure.kind === 'ingredient') return `No ${kinTitle(measure.kin)}: ${test.source.text}`;
  if (measure.kind === 'additive') return `No ${measure.class} additive named on the label: ${test.source.text}`;
  if (!isBoundTest(test)) return test.source.text;
  const { name: nutrient, unit } = nutrients[measure.nutrient];
  const figure = ({ below, atMost = 0 }: Test): string => `${floorTo(below ?? atMost, 1).toLocaleString('en-US')} ${unit}`;
  const ofDay = tests.find(({ id }) => id === test.id) ?? test;
  const limit = test.below === undefined ? 'at most' : 'less than';
  return `This whole plate may take ${limit} ${figure(test)} ${nutrient}, what the food is eaten with counted (${percent}% of ${figure(ofDay)} a day for ${name})`;
}

/** The closed form's share of the plate's portion, in words, never more than the portion itself. */
function shareText(share: number, plate: Plate): string {
  if (share <= 0) return 'none';
  if (share >= 1) return portionText(plate.portion);
  return `${floorTo(share * 100, 0)}% of ${portionText(plate.portion)}`;
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
