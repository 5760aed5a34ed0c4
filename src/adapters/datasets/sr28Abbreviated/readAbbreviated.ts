import type { DatasetFile, DatasetIssueCode } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import type { Issue } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import type { ReferenceNutrient } from '#core/reference/referenceFood.ts';
import { csvRecords } from '../csvRecords.ts';
import { DatasetReport } from '../datasetReport.ts';
import { FoodsBuilder } from '../foodsBuilder.ts';
import { releaseIn } from '../sr28Ascii/release.ts';

/** Columns of the abbreviated file as CSV. Alcohol has none and stays unknown. */
const columns: readonly (readonly [heading: string, key: ReferenceNutrient])[] = [
  ['Water_(g)', 'waterG'],
  ['Energ_Kcal', 'energyKcal'],
  ['Protein_(g)', 'proteinG'],
  ['Lipid_Tot_(g)', 'fatG'],
  ['FA_Sat_(g)', 'saturatedFatG'],
  ['Cholestrl_(mg)', 'cholesterolMg'],
  ['Carbohydrt_(g)', 'carbohydrateG'],
  ['Fiber_TD_(g)', 'fiberG'],
  ['Sugar_Tot_(g)', 'totalSugarsG'],
  ['Calcium_(mg)', 'calciumMg'],
  ['Iron_(mg)', 'ironMg'],
  ['Magnesium_(mg)', 'magnesiumMg'],
  ['Phosphorus_(mg)', 'phosphorusMg'],
  ['Potassium_(mg)', 'potassiumMg'],
  ['Sodium_(mg)', 'sodiumMg'],
];

/** Number, short description, and figures of 100 g in one row: the abbreviated file of USDA SR, as CSV. */
export async function readAbbreviated(
  file: DatasetFile,
  folder: string,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<LargerTable> {
  const report = new DatasetReport(file.name, issues);
  const foods = new FoodsBuilder();
  for await (const { line, cell } of csvRecords(file, watch, report)) {
    const number = cell('NDB_No').trim();
    const description = cell('Shrt_Desc').trim();
    if (!/^\d{4,6}$/.test(number) || description === '') {
      report.add('row-without-number', line, `number "${number}", description "${description}"`, 'both; the row is left out');
      continue;
    }
    const padded = number.padStart(5, '0');
    if (!foods.begin(padded, padded, description, groupOfNumber(padded))) {
      report.add('food-twice', line, padded, 'one row a food; this one is left out');
      continue;
    }
    for (const [heading, key] of columns) {
      const value = report.figure(cell(heading), key, line);
      if (value !== null) foods.set(padded, key, value);
    }
    for (const which of [1, 2]) {
      const text = cell(`GmWt_Desc${which}`);
      if (text !== '') foods.measure(padded, text, Number(cell(`GmWt_${which}`)) || null);
    }
  }
  const source = 'USDA National Nutrient Database for Standard Reference, abbreviated file';
  return { dataset: 'usda-sr', source, edition: releaseIn(`${folder} ${file.name}`) ?? 'release not told', foods: foods.foods() };
}

/**
 * The abbreviated file names no group. Numbers were given by the sections of Agriculture Handbook 8, so that the first two
 * digits are the group's (from memory); later ranges are not, and their group is unknown.
 */
function groupOfNumber(number: string): string | null {
  const section = Number(number.slice(0, 2));
  return (section >= 1 && section <= 22) || [25, 35, 36].includes(section) ? `${number.slice(0, 2)}00` : null;
}
