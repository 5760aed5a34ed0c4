import type { JudgedFood, JudgedShelf, TellableWays } from '#app/judgeShelf.ts';
import type { Issue } from '#core/errors.ts';
import { recordOf } from '#core/json/recordOf.ts';
import type { Plate } from '#core/plate/plate.ts';
import { onPlate } from '#core/plate/plateAmounts.ts';
import type { Total } from '#core/quantity/amount.ts';
import { type Interval, intervalToJson } from '#core/quantity/interval.ts';
import { type SurveyCell, type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import type { TestVerdict } from '#core/yardstick/yardstick.ts';
import { additiveToJson } from './additiveToJson.ts';
import type { JsonObject } from './answerLines.ts';

/** A survey as docs/formats.md describes it. Absent means unknown; a range without an upper end has null there. */
export function surveyJson(
  { plate, yardstick, setting, counts, foods }: JudgedShelf<TellableWays>,
  report: readonly Issue[],
  columns: readonly SurveyColumnKey[] = [],
): JsonObject {
  return {
    plate: plate.id,
    yardstick: yardstick.id,
    setting: setting ?? null,
    cautions: yardstick.cautions,
    counts,
    foods: foods.map(one => foodToJson(one, plate, columns)),
    report,
  };
}

function foodToJson({ food, verdict, waysIn }: JudgedFood<TellableWays>, plate: Plate, columns: readonly SurveyColumnKey[]): JsonObject {
  return {
    id: food.id,
    name: food.name,
    maker: food.label.printed.maker,
    verdict: verdict.verdict,
    closeCall: verdict.closeCall,
    estimated: verdict.estimated,
    why: verdict.why,
    onPlate: recordOf(['energyKcal', 'sodiumMg'], nutrient => totalToJson(onPlate(plate, food, nutrient))),
    columns: columns.length === 0 ? undefined : recordOf(columns, key => shownCell(surveyColumns[key].cell(food, plate))),
    tests: verdict.tests.map(testToJson),
    classes: verdict.classes,
    statementRead: food.label.statement !== undefined,
    additives: food.label.additives.map(additiveToJson),
    waysIn: waysIn?.ways.map(({ kind, what, totals }) => ({ kind, what, totals: mapValues(totals, totalToJson) })) ?? [],
    noWayIn: waysIn?.none,
    findings: food.label.findings,
  };
}

function testToJson({ judged, range, marginRange, ...test }: TestVerdict): JsonObject {
  return { ...test, judged: rangeToJson(judged), range: rangeToJson(range), marginRange: rangeToJson(marginRange) };
}

function totalToJson({ judged, range, estimated, missing }: Total): JsonObject {
  return { judged: intervalToJson(judged), range: intervalToJson(range), estimated, missing };
}

function rangeToJson(range: Interval | undefined): ReturnType<typeof intervalToJson> | undefined {
  return range === undefined ? undefined : intervalToJson(range);
}

function mapValues<From, To>(record: Readonly<Record<string, From>>, change: (value: From) => To): Record<string, To> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}

function shownCell({ text, low }: SurveyCell): JsonObject {
  return { text, low };
}
