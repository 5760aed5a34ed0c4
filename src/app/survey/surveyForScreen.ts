import { type CountedClass, countedClasses } from '#core/additive/countedClasses.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import { portionText } from '#core/plate/portionText.ts';
import type { Total } from '#core/quantity/amount.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { planeRule } from '#core/yardstick/planeRule.ts';
import { type SurveyCell, type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { toldMargin, toldTest } from '#core/yardstick/toldTest.ts';
import type { Verdict, VerdictWord, Yardstick } from '#core/yardstick/yardstick.ts';
import type { JudgedFood, JudgedShelf } from '../judgeShelf.ts';
import type { ShelfFood } from '../shelf.ts';
import { testInWords } from './testInWords.ts';

export interface SurveyRow {
  readonly foodId: string;
  readonly name: string;
  readonly maker?: string;
  readonly verdict: VerdictWord;
  readonly closeCall: boolean;
  readonly estimated: boolean;
  /** Energy and sodium of the portion alone, for the plane; null when unknown. */
  readonly energyKcal: number | null;
  readonly sodiumMg: number | null;
  /** In the order they were asked for. */
  readonly columns: readonly Pick<SurveyCell, 'text' | 'low'>[];
  /** "10 mg over", "20 mg to spare", "sodium is unknown (not on the label)". */
  readonly margin: string;
  /** Additive classes that count, and whether that is certain. */
  readonly additives: readonly CountedClass[];
  readonly findings: number;
  readonly recheckOn?: string;
}

/** A survey for the screen: one short row a food. Reasons and ways in come by `surveyReasons`. */
export function surveyForScreen(
  { plate, yardstick, switchedOn = [], counts, foods }: JudgedShelf<unknown>,
  shelfFoods: readonly ShelfFood[],
  columns: readonly SurveyColumnKey[],
) {
  const recheckOn = new Map(shelfFoods.map(({ row, label }) => [row.id, label.recheckOn]));
  return {
    counts,
    rule: planeRule(testsJudged(yardstick, switchedOn), plate),
    plateTitle: plate.title,
    portionText: portionText(plate.portion),
    companionsText: companionsText(plate),
    yardstickTitle: yardstick.title,
    tests: yardstick.tests.map(test => ({ ...testInWords(test), isOn: !test.off || switchedOn.includes(test.id) })),
    cautions: yardstick.cautions,
    rows: foods.map(one => surveyRow(one, { plate, yardstick, columns, recheckOn: recheckOn.get(one.food.id) })),
  };
}

function surveyRow(
  { food, verdict }: JudgedFood<unknown>,
  {
    plate,
    yardstick,
    columns,
    recheckOn,
  }: Pick<JudgedShelf, 'plate' | 'yardstick'> & {
    readonly columns: readonly SurveyColumnKey[];
    readonly recheckOn: string | undefined;
  },
): SurveyRow {
  const alone = [{ food, portion: plate.portion }];
  const { maker } = food.label.printed;
  return {
    foodId: food.id,
    name: food.name,
    ...(maker === undefined ? {} : { maker }),
    verdict: verdict.verdict,
    closeCall: verdict.closeCall,
    estimated: verdict.estimated,
    energyKcal: plotted(plateTotal(alone, 'energyKcal')),
    sodiumMg: plotted(plateTotal(alone, 'sodiumMg')),
    columns: columns.map(key => {
      const { text, low } = surveyColumns[key].cell(food, plate);
      return { text, low };
    }),
    margin: marginOf(verdict, yardstick),
    additives: countedClasses(food.label.additives),
    findings: food.label.findings.length,
    ...(recheckOn === undefined ? {} : { recheckOn }),
  };
}

/** What the companions bring, in one sentence: "The companions bring 160 kcal and 20 mg sodium." */
export function companionsText(plate: Plate): string {
  if (plate.companions.length === 0) return 'Eaten on its own.';
  const names = plate.companions.map(({ food, portion }) => `${portionText(portion)} of ${food.name}`).join(' and ');
  const energy = plotted(plateTotal(plate.companions, 'energyKcal'));
  const sodium = plotted(plateTotal(plate.companions, 'sodiumMg'));
  return `${names.charAt(0).toUpperCase()}${names.slice(1)} ${plate.companions.length > 1 ? 'bring' : 'brings'} ${energy === null ? 'an unknown energy' : `${energy} kcal`} and ${sodium === null ? 'an unknown amount of sodium' : `${sodium} mg sodium`}.`;
}

/** The number that is compared, where there is one. */
function plotted({ judged, missing }: Total): number | null {
  return missing.length > 0 || judged.lo !== judged.hi ? null : roundHalfUp(judged.hi, 1);
}

/** What is to spare or over in the test that decides; the reason where nothing can be told. */
export function marginOf(verdict: Verdict, yardstick: Yardstick): string {
  const deciding = verdict.tests.filter(test => test.verdict === verdict.verdict);
  const measured = deciding.find(({ margin }) => margin !== undefined);
  const test = yardstick.tests.find(({ id }) => id === measured?.testId);
  if (measured === undefined || test === undefined || !isBoundTest(test)) return deciding[0]?.reason ?? verdict.why;
  return toldMargin(toldTest(test), measured) ?? verdict.why;
}
