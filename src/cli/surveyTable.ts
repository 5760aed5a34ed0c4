import type { JudgedFood, JudgedShelf, TellableWays } from '#app/judgeShelf.ts';
import { additivesText, totalText } from '#app/survey/surveyWords.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { onPlate } from '#core/plate/plateAmounts.ts';
import { type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { settings, verdictWords } from '#core/yardstick/yardstick.ts';
import { hanging, padEnd, padStart, wrap } from './layOut.ts';

const verdictWidth = 12;
const figureWidth = 11;
const indent = ' '.repeat(verdictWidth);

/** A survey for a terminal of `width` characters: counts, what was asked, then the foods by verdict, each with the columns asked for. */
export function surveyTable(survey: JudgedShelf<TellableWays>, width: number, columns: readonly SurveyColumnKey[] = []): string {
  const { counts, foods, plate, yardstick, setting } = survey;
  const lines = [
    `${foods.length} ${foods.length === 1 ? 'food' : 'foods'}: ${verdictWords.map(word => `${counts[word]} ${word}`).join(', ')}`,
    ...hanging('Yardstick:', `${yardstick.title}. ${yardstick.purpose}`, width, ''),
    ...hanging('Plate:', plate.title, width, ''),
    ...hanging('Setting:', setting ?? `not given (${settings.join(', ')})`, width, ''),
    ...yardstick.cautions.flatMap(caution => hanging('Note:', caution, width, '')),
    '',
    padEnd('VERDICT', verdictWidth) + padEnd('FOOD', nameWidth(width)) + padStart('ENERGY', figureWidth) + padStart('SODIUM', figureWidth),
    padEnd('', verdictWidth + nameWidth(width)) + padStart('kcal, plate', figureWidth) + padStart('mg, plate', figureWidth),
    ...verdictWords
      .flatMap(word => foods.filter(({ verdict }) => verdict.verdict === word))
      .flatMap(food => foodLines(food, plate, width, columns)),
  ];
  return lines.map(line => `${line.trimEnd()}\n`).join('');
}

function nameWidth(width: number): number {
  return width - verdictWidth - 2 * figureWidth;
}

function foodLines(
  { food, verdict, waysIn }: JudgedFood<TellableWays>,
  plate: Plate,
  width: number,
  columns: readonly SurveyColumnKey[],
): string[] {
  const { maker } = food.label.printed;
  const names = wrap(maker === undefined ? food.name : `${food.name} · ${maker}`, nameWidth(width) - 1);
  const figures = (['energyKcal', 'sodiumMg'] as const)
    .map(nutrient => padStart(totalText(onPlate(plate, food, nutrient)) ?? 'unknown', figureWidth))
    .join('');
  const flags = [...(verdict.closeCall ? ['close call'] : []), ...(verdict.estimated ? ['estimated'] : [])];
  return [
    '',
    padEnd(verdict.verdict, verdictWidth) + padEnd(names[0] ?? '', nameWidth(width)) + figures,
    ...names.slice(1).map(line => indent + line),
    ...(flags.length > 0 ? [indent + flags.join(', ')] : []),
    // In a line below, since further columns beside the name would leave it no room.
    ...wrap(columns.map(key => cellText(key, food, plate)).join('; '), width, indent),
    ...wrap(verdict.why, width, indent),
    ...verdict.classes.flatMap(({ why }) => wrap(why, width, indent)),
    ...hanging('Additives:', additivesText(food.label), width, indent),
    ...waysLines(waysIn, width),
    ...food.label.findings.flatMap(({ message }) => hanging('Finding:', message, width, indent)),
  ];
}

/** "Potassium: 205 mg". */
function cellText(key: SurveyColumnKey, food: PlateFood, plate: Plate): string {
  const { title, cell } = surveyColumns[key];
  return `${title}: ${cell(food, plate).text}`;
}

function waysLines(waysIn: TellableWays | undefined, width: number): string[] {
  if (waysIn === undefined) return [];
  if (waysIn.ways.length === 0) return wrap(waysIn.none ?? 'No way in was found.', width, indent);
  return waysIn.ways.flatMap(({ what }) => hanging('Way in:', what, width, indent));
}
