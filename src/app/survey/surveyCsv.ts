import { onPlate } from '#core/plate/plateAmounts.ts';
import { type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { csvRow } from '../csvRow.ts';
import type { JudgedShelf, TellableWays } from '../judgeShelf.ts';
import { additivesText, totalText } from './surveyWords.ts';

const headings = ['name', 'maker', 'verdict', 'closeCall', 'why', 'energyKcal', 'sodiumMg', 'additives', 'waysIn', 'findings'];

/**
 * One row a food, in the order of the survey. Energy and sodium are those of the whole plate, empty where a part is unknown; further
 * columns are those that the person has chosen, of the portion alone.
 */
export function surveyCsv(survey: JudgedShelf<TellableWays>, columns: readonly SurveyColumnKey[] = []): string {
  return surveyCsvHead(columns) + surveyCsvRows(survey, columns);
}

export function surveyCsvHead(columns: readonly SurveyColumnKey[]): string {
  return csvRow([...headings, ...columns]);
}

/** Without the headings, for a survey that is written part by part. */
export function surveyCsvRows({ foods, plate }: JudgedShelf<TellableWays>, columns: readonly SurveyColumnKey[]): string {
  const rows = foods.map(({ food, verdict, waysIn }) =>
    csvRow([
      food.name,
      food.label.printed.maker ?? '',
      verdict.verdict,
      verdict.closeCall ? 'yes' : 'no',
      verdict.why,
      totalText(onPlate(plate, food, 'energyKcal')) ?? '',
      totalText(onPlate(plate, food, 'sodiumMg')) ?? '',
      additivesText(food.label),
      waysIn === undefined ? '' : waysIn.ways.map(({ what }) => what).join(' | ') || (waysIn.none ?? ''),
      food.label.findings.map(({ message }) => message).join(' | '),
      ...columns.map(key => surveyColumns[key].cell(food, plate).figure),
    ]),
  );
  return rows.join('');
}
