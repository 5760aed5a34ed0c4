import type { Survey, SurveyedFood } from '#app/surveyCategory.ts';
import { additivesText, totalText } from '#app/surveyWords.ts';
import { settings, type VerdictWord } from '#core/yardstick/yardstick.ts';
import { hanging, padEnd, padStart, wrap } from './layOut.ts';

const verdictWords: readonly VerdictWord[] = ['fits', 'nearly', 'over', "can't tell"];
const verdictWidth = 12;
const figureWidth = 11;
const indent = ' '.repeat(verdictWidth);

/** A survey for a terminal of `width` columns: counts, what was asked, then the foods by verdict. */
export function surveyTable(survey: Survey, width: number): string {
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
    ...verdictWords.flatMap(word => foods.filter(({ verdict }) => verdict.verdict === word)).flatMap(food => foodLines(food, width)),
  ];
  return lines.map(line => `${line.trimEnd()}\n`).join('');
}

function nameWidth(width: number): number {
  return width - verdictWidth - 2 * figureWidth;
}

function foodLines(surveyed: SurveyedFood, width: number): string[] {
  const { food, verdict, onPlate } = surveyed;
  const { maker } = food.label.printed;
  const names = wrap(maker === undefined ? food.name : `${food.name} · ${maker}`, nameWidth(width) - 1);
  const figures = [onPlate.energyKcal, onPlate.sodiumMg].map(total => padStart(totalText(total) ?? 'unknown', figureWidth)).join('');
  const flags = [...(verdict.closeCall ? ['close call'] : []), ...(verdict.estimated ? ['estimated'] : [])];
  return [
    '',
    padEnd(verdict.verdict, verdictWidth) + padEnd(names[0] ?? '', nameWidth(width)) + figures,
    ...names.slice(1).map(line => indent + line),
    ...(flags.length > 0 ? [indent + flags.join(', ')] : []),
    ...wrap(verdict.why, width, indent),
    ...verdict.classes.flatMap(({ why }) => wrap(why, width, indent)),
    ...hanging('Additives:', additivesText(surveyed), width, indent),
    ...waysLines(surveyed, width),
    ...food.label.findings.flatMap(({ message }) => hanging('Finding:', message, width, indent)),
  ];
}

function waysLines({ waysIn }: SurveyedFood, width: number): string[] {
  if (waysIn === undefined) return [];
  if (waysIn.ways.length === 0) return wrap(waysIn.none ?? 'No way in was found.', width, indent);
  return waysIn.ways.flatMap(({ what }) => hanging('Way in:', what, width, indent));
}
