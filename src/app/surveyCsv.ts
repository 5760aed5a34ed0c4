import type { Survey } from '#app/surveyCategory.ts';
import { csvRow } from './csvRow.ts';
import { additivesText, totalText } from './surveyWords.ts';

const headings = ['name', 'maker', 'verdict', 'closeCall', 'why', 'energyKcal', 'sodiumMg', 'additives', 'waysIn', 'findings'];

/** One row a food, in the order of the survey. Energy and sodium are those of the whole plate, empty where a part is unknown. */
export function surveyCsv({ foods }: Survey): string {
  const rows = foods.map(surveyed => {
    const { food, verdict, onPlate, waysIn } = surveyed;
    return csvRow([
      food.name,
      food.label.printed.maker ?? '',
      verdict.verdict,
      verdict.closeCall ? 'yes' : 'no',
      verdict.why,
      totalText(onPlate.energyKcal) ?? '',
      totalText(onPlate.sodiumMg) ?? '',
      additivesText(surveyed),
      waysIn === undefined ? '' : waysIn.ways.map(({ what }) => what).join(' | ') || (waysIn.none ?? ''),
      food.label.findings.map(({ message }) => message).join(' | '),
    ]);
  });
  return csvRow(headings) + rows.join('');
}
