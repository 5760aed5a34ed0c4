import type { DatasetFile, DatasetIssueCode } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import type { Issue } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import type { ReferenceNutrient } from '#core/reference/referenceFood.ts';
import { datasetLines } from '../datasetLines.ts';
import { DatasetReport } from '../datasetReport.ts';
import { FoodsBuilder } from '../foodsBuilder.ts';
import { releaseIn } from './release.ts';

/** Nutrient numbers of NUTR_DEF and what they are here; amounts of 100 g in the unit of the key. */
const nutrientOf: ReadonlyMap<string, ReferenceNutrient> = new Map([
  ['208', 'energyKcal'],
  ['203', 'proteinG'],
  ['204', 'fatG'],
  ['606', 'saturatedFatG'],
  ['601', 'cholesterolMg'],
  ['205', 'carbohydrateG'],
  ['291', 'fiberG'],
  ['269', 'totalSugarsG'],
  ['221', 'alcoholG'],
  ['255', 'waterG'],
  ['301', 'calciumMg'],
  ['303', 'ironMg'],
  ['304', 'magnesiumMg'],
  ['305', 'phosphorusMg'],
  ['306', 'potassiumMg'],
  ['307', 'sodiumMg'],
]);

export interface Sr28Files {
  readonly foods: DatasetFile;
  readonly figures: DatasetFile;
  readonly weights: DatasetFile | undefined;
}

/**
 * The ASCII release of USDA SR: FOOD_DES.txt, NUT_DATA.txt, WEIGHT.txt; fields end in "^", text stands in "~", ISO 8859-1.
 * A figure that has no line, or an empty one, is unknown.
 */
export async function readSr28(
  { foods: foodFile, figures, weights }: Sr28Files,
  folder: string,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<LargerTable> {
  const foods = new FoodsBuilder();
  const noted = new DatasetReport(foodFile.name, issues);
  for await (const lines of datasetLines(foodFile, 'latin1', watch))
    for (const { line, text } of lines) {
      if (text === '') continue;
      const [number = '', group = '', description = ''] = fieldsOf(text, 3);
      if (!/^\d{5,6}$/.test(number) || description === '')
        noted.add('row-without-number', line, text, 'a number and a description; the row is left out');
      else if (!foods.begin(number, number, description, /^\d{4}$/.test(group) ? group : null))
        noted.add('food-twice', line, number, 'one row a food; this one is left out');
    }
  const newest = await readFigures(figures, foods, watch, issues);
  if (weights !== undefined) await readWeights(weights, foods, watch, issues);
  const edition = releaseIn(`${folder} ${foodFile.name}`) ?? (newest === '' ? 'release not told' : `newest figure of ${newest}`);
  const source = 'USDA National Nutrient Database for Standard Reference, ASCII files';
  return { dataset: 'usda-sr', source, edition, foods: foods.foods() };
}

/** Gives the newest month of a figure, "2015-05"; empty where no line has one. */
async function readFigures(file: DatasetFile, foods: FoodsBuilder, watch: Watch, issues: Issue<DatasetIssueCode>[]): Promise<string> {
  const noted = new DatasetReport(file.name, issues);
  let newest = '';
  for await (const lines of datasetLines(file, 'latin1', watch))
    for (const { line, text } of lines) {
      if (text === '') continue;
      const [number = '', nutrient = '', field] = fieldsOf(text, 3);
      if (field === undefined) {
        noted.add('row-too-short', line, text, 'a food, a nutrient and an amount; the row is left out');
        continue;
      }
      const key = nutrientOf.get(nutrient);
      if (key === undefined) continue;
      if (!foods.has(number)) {
        noted.add('row-without-number', line, number, 'a number of FOOD_DES; the row is left out');
        continue;
      }
      const month = /\^(\d\d)\/(\d{4})\^[^^]*$/.exec(text);
      if (month !== null && `${month[2]}-${month[1]}` > newest) newest = `${month[2]}-${month[1]}`;
      const value = noted.figure(field, key, line);
      if (value === null) continue;
      if (foods.figure(number, key) === null) foods.set(number, key, value);
      else noted.add('figure-twice', line, `${number}, ${key}`, 'one amount; the first is kept');
    }
  return newest;
}

async function readWeights(file: DatasetFile, foods: FoodsBuilder, watch: Watch, issues: Issue<DatasetIssueCode>[]): Promise<void> {
  const noted = new DatasetReport(file.name, issues);
  for await (const lines of datasetLines(file, 'latin1', watch))
    for (const { line, text } of lines) {
      if (text === '') continue;
      const [number = '', , amount = '', measure = '', grams] = fieldsOf(text, 5);
      if (grams === undefined) noted.add('row-too-short', line, text, 'a food, an amount, a measure and its grams; the row is left out');
      else foods.measure(number, `${amount.trim()} ${measure}`, Number(grams) || null);
    }
}

/** The first fields of a line, without the tildes around text. */
function fieldsOf(text: string, count: number): readonly string[] {
  return text.split('^', count).map(field => (field.startsWith('~') ? field.replace(/^~|~$/g, '').trim() : field));
}
