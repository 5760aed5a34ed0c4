import { aimStates } from '#core/client/aims/aimStates.ts';
import { type ClientAim, clientAims } from '#core/client/aims/clientAims.ts';
import { isMost, isNeed } from '#core/client/aims/limitKind.ts';
import { householdFluid } from '#core/client/prescription/householdFluid.ts';
import { type ClientRecord, type DecidedTarget, evenPattern, type MealShare } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import type { Plate } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { floorTo } from '#core/quantity/rounding.ts';
import { byAimRank } from '#core/yardstick/aimOrder.ts';
import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { seldomPrinted } from '#core/yardstick/byLabel.ts';
import { reasonText } from '#core/yardstick/clientReason.ts';
import { kinTitle } from '#core/yardstick/ingredientKin.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import { type Test, verdictWords, type Yardstick } from '#core/yardstick/yardstick.ts';
import type { ShelfFood } from '../shelf.ts';
import { type FitsQuestion, type FitsRow, fitsRow } from './fitsRow.ts';
import { judgeForClient } from './judgeForClient.ts';
import { whatIsForbidden } from './whatIsForbidden.ts';

export interface FitsInput {
  readonly record: ClientRecord;
  /** Foods with the plate they are eaten on: a category each, as a rule. */
  readonly served: readonly { readonly plate: Plate; readonly foods: readonly ShelfFood[] }[];
  /** A meal of the client's pattern. */
  readonly meal: string;
  readonly useEstimates: boolean;
  readonly today: Day;
  /** What the clinic has set. */
  readonly rules?: CareRules;
}

/** What a row tells of, in the order in which it is offered where nothing else comes first. */
const shownNutrients: readonly Nutrient[] = ['sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG', 'energyKcal'];

/**
 * The shelf judged for one client by the signed prescription: each food on its category's plate against a meal's share of the day, how
 * much of it fits in that meal and in a day, and what would settle a verdict that the label does not tell.
 */
export function whatFits({ record, served, meal, useEstimates, today, rules }: FitsInput) {
  const [prescription] = record.prescriptions;
  const targets = prescription?.targets ?? [];
  const share = mealOf(record, meal);
  const forbidden = whatIsForbidden(record, today);
  const aims = clientAims({ targets, isSuppressed: forbidden.isSuppressed, states: aimStates(record, today, rules) });
  const judged = served.map(({ plate, foods }) => {
    const categorized = foods.map(({ row: { category }, food }) => (category === undefined ? { food } : { food, category }));
    return { plate, foods, shelf: judgeForClient(categorized, { ...forbidden, targets, useEstimates, meal: share, plate }) };
  });
  const none = { meal: share.name, tests: [], nutrients: [], counts: countsOf([]), notTold: [], rows: [], toAsk: [] };
  if (prescription === undefined) return { ...none, none: 'Nothing is signed yet: sign a prescription to see what fits.' };
  const [first] = judged;
  if (first === undefined) return none;
  const { yardstick, dayYardstick } = first.shelf;
  if (yardstick.tests.length === 0) return { ...none, none: 'The signed prescription bounds no food from above.' };
  const shown = byAims(aims);
  const question = { aims, useEstimates, shown, yardstick, fluid: fluidOfDay(targets) };
  const all = judged.flatMap(({ plate, foods, shelf }) => {
    const onPlate = { ...question, plate, companions: companionTotals(plate.companions) };
    return foods.map((food, at) => ({ food, judged: shelf.foods[at]!, row: fitsRow(food, shelf.foods[at]!, onPlate) }));
  });
  const isJudged = new Set(yardstick.tests.flatMap(test => (test.measure.kind === 'nutrient' ? [test.measure.nutrient] : [])));
  return {
    meal: share.name,
    tests: yardstick.tests.map(test => testWords(test, dayYardstick, share)),
    nutrients: shown.map(nutrient => ({ nutrient, title: titleOf(nutrient, isJudged.has(nutrient)), isJudged: isJudged.has(nutrient) })),
    counts: countsOf(all.map(({ row }) => row)),
    notTold: seldomPrinted.flatMap(mineral => {
      const count = all.filter(one => one.judged.notTold.includes(mineral)).length;
      if (count === 0) return [];
      const words = `${mineral} could not be told for ${count} of ${all.length} ${all.length === 1 ? 'food' : 'foods'}; judged by additives`;
      return [{ mineral, foods: count, of: all.length, words }];
    }),
    rows: placed(all.map(({ row }) => row)),
    toAsk: all
      .filter(one => one.judged.offer === 'ask')
      .map(
        ({ food: { row }, judged: { reasons } }) =>
          `${row.name}${row.maker === undefined ? '' : `, ${row.maker}`}: ${reasonText(reasons[0]!)}`,
      ),
  };
}

function mealOf({ mealPattern = evenPattern }: ClientRecord, meal: string): MealShare {
  return mealPattern.find(({ name }) => name === meal) ?? mealPattern[0]!;
}

/** What matters for this client first, then the usual order. */
function byAims(aims: readonly ClientAim[]): readonly Nutrient[] {
  const wanted = aims.flatMap(({ criteria }) => criteria.flatMap(one => (one.kind === 'amount' && one.of !== 'fluidMl' ? [one.of] : [])));
  return [...new Set([...wanted, ...shownNutrients])];
}

/** "Potassium, told" where nothing signed bounds it. */
function titleOf(nutrient: Nutrient, isJudged: boolean): string {
  const { name } = nutrients[nutrient];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${isJudged ? '' : ', told'}`;
}

function fluidOfDay(targets: readonly DecidedTarget[]): FitsQuestion['fluid'] {
  const target = targets.find(({ item }) => item === 'fluid');
  const cups = target?.range && householdFluid(target.range, target.limit ?? 'within');
  return target === undefined || cups === undefined || !(isMost(target) || isNeed(target)) ? undefined : { cups, isMost: isMost(target) };
}

function countsOf(rows: readonly Pick<FitsRow, 'verdict' | 'avoided'>[]) {
  const of = (word: FitsRow['verdict']): number => rows.filter(row => row.avoided === undefined && row.verdict === word).length;
  return {
    fits: of('fits'),
    nearly: of('nearly'),
    over: of('over'),
    "can't tell": of("can't tell"),
    avoided: rows.filter(row => row.avoided !== undefined).length,
  };
}

/** Each row with its place among all: what fits first, there by the client's aims, then by the room that is left; what is avoided last. */
function placed(rows: readonly FitsRow[]) {
  const group = (row: FitsRow): number => (row.avoided === undefined ? verdictWords.indexOf(row.verdict) : verdictWords.length);
  const order = [...rows.keys()].sort((a, b) => {
    const [one, other] = [rows[a]!, rows[b]!];
    const byMargin = (other.margin ?? Number.NEGATIVE_INFINITY) - (one.margin ?? Number.NEGATIVE_INFINITY);
    return group(one) - group(other) || byAimRank(one.rank, other.rank) || (Number.isNaN(byMargin) ? 0 : byMargin) || a - b;
  });
  const places = new Map(order.map((at, place) => [at, place]));
  return rows.map(({ rank: _, ...row }, at) => ({ ...row, place: places.get(at)! }));
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
