import type { DatasetFile, DatasetIssueCode } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import type { Issue } from '#core/errors.ts';
import type { LargerDataset, LargerTable } from '#core/reference/largerTable.ts';
import type { ReferenceNutrient } from '#core/reference/referenceFood.ts';
import { csvRecords } from '../csvRecords.ts';
import { DatasetReport } from '../datasetReport.ts';
import { FoodsBuilder } from '../foodsBuilder.ts';

/** Nutrient ids of nutrient.csv; where two name one figure the first that a food has counts. */
const idsOf: readonly (readonly [key: ReferenceNutrient, unit: string, ids: readonly string[]])[] = [
  // Energy, then energy by specific and by general Atwater factors, as foundation foods have it.
  ['energyKcal', 'KCAL', ['1008', '2048', '2047']],
  ['proteinG', 'G', ['1003']],
  ['fatG', 'G', ['1004']],
  ['saturatedFatG', 'G', ['1258']],
  ['cholesterolMg', 'MG', ['1253']],
  ['carbohydrateG', 'G', ['1005']],
  ['fiberG', 'G', ['1079']],
  ['totalSugarsG', 'G', ['2000', '1063']],
  ['alcoholG', 'G', ['1018']],
  ['waterG', 'G', ['1051']],
  ['calciumMg', 'MG', ['1087']],
  ['ironMg', 'MG', ['1089']],
  ['magnesiumMg', 'MG', ['1090']],
  ['phosphorusMg', 'MG', ['1091']],
  ['potassiumMg', 'MG', ['1092']],
  ['sodiumMg', 'MG', ['1093']],
];

const meaningOf = new Map(idsOf.flatMap(([key, unit, ids]) => ids.map((id, rank) => [id, { key, unit, rank }] as const)));

const datasets: Readonly<Record<string, { readonly dataset: LargerDataset; readonly source: string }>> = {
  foundation_food: { dataset: 'fdc-foundation', source: 'USDA FoodData Central, foundation foods' },
  sr_legacy_food: { dataset: 'fdc-sr-legacy', source: 'USDA FoodData Central, SR Legacy' },
};

export interface FdcFiles {
  readonly foods: DatasetFile;
  readonly figures: DatasetFile;
  /** nutrient.csv, food_category.csv, food_portion.csv, measure_unit.csv, sr_legacy_food.csv, foundation_food.csv: each may be missing. */
  readonly others: ReadonlyMap<string, DatasetFile>;
}

/**
 * The CSV download of FoodData Central: foundation foods and SR Legacy, each a table of its own; branded, survey and
 * sample foods of the same files are passed over. A figure that has no line is unknown.
 */
export async function readFdc(
  { foods: foodFile, figures, others }: FdcFiles,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<LargerTable[]> {
  const rows = (file: DatasetFile, report: DatasetReport) => csvRecords(file, watch, report);
  const pairs = async (name: string, from: string, to: string): Promise<Map<string, string>> => {
    const file = others.get(name);
    const found = new Map<string, string>();
    if (file === undefined) return found;
    for await (const { cell } of rows(file, new DatasetReport(file.name, issues))) found.set(cell(from), cell(to));
    return found;
  };
  const codes = await pairs('food_category.csv', 'id', 'code');
  const numbers = new Map([
    ...(await pairs('sr_legacy_food.csv', 'fdc_id', 'NDB_number')),
    ...(await pairs('foundation_food.csv', 'fdc_id', 'NDB_number')),
  ]);
  const builders = new Map(Object.keys(datasets).map(type => [type, { foods: new FoodsBuilder(), published: '' }]));
  const ownerOf = new Map<string, FoodsBuilder>();
  const noted = new DatasetReport(foodFile.name, issues);
  for await (const { line, cell } of rows(foodFile, noted)) {
    const builder = builders.get(cell('data_type'));
    if (builder === undefined) continue;
    const id = cell('fdc_id').trim();
    const description = cell('description').trim();
    if (!/^\d+$/.test(id) || description === '') {
      noted.add('row-without-number', line, `fdc_id "${id}", description "${description}"`, 'both; the row is left out');
      continue;
    }
    const number = numbers.get(id);
    if (!builder.foods.begin(id, number ? number.padStart(5, '0') : `FDC ${id}`, description, groupOf(cell('food_category_id'), codes)))
      noted.add('food-twice', line, id, 'one row a food; this one is left out');
    ownerOf.set(id, builder.foods);
    const day = cell('publication_date');
    if (/^\d{4}-\d\d-\d\d$/.test(day) && day > builder.published) builder.published = day;
  }
  await readFigures(figures, ownerOf, await unitsToTrust(others.get('nutrient.csv'), watch, issues), watch, issues);
  await readPortions(others.get('food_portion.csv'), await pairs('measure_unit.csv', 'id', 'name'), ownerOf, watch, issues);
  return [...builders].flatMap(([type, { foods, published }]) => {
    const found = foods.foods();
    return found.length === 0
      ? []
      : [{ ...datasets[type]!, edition: published === '' ? 'date not told' : `foods published up to ${published}`, foods: found }];
  });
}

/** Code of food_category.csv; without that file ids 1 to 22 are the hundreds of the code (seen in published rows). */
function groupOf(categoryId: string, codes: ReadonlyMap<string, string>): string | null {
  const code = codes.get(categoryId);
  if (code !== undefined && /^\d{4}$/.test(code)) return code;
  if (/^\d{4}$/.test(categoryId)) return categoryId;
  const id = Number(categoryId);
  return codes.size === 0 && Number.isInteger(id) && id >= 1 && id <= 22 ? `${String(id).padStart(2, '0')}00` : null;
}

/** Nutrient ids whose unit is the one that is expected here. Any other would be wrong by a thousand, and stays unknown. */
async function unitsToTrust(file: DatasetFile | undefined, watch: Watch, issues: Issue<DatasetIssueCode>[]): Promise<ReadonlySet<string>> {
  const trusted = new Set(meaningOf.keys());
  if (file === undefined) return trusted;
  const noted = new DatasetReport(file.name, issues);
  for await (const { line, cell } of csvRecords(file, watch, noted)) {
    const meaning = meaningOf.get(cell('id'));
    if (meaning === undefined || cell('unit_name').toUpperCase() === meaning.unit) continue;
    noted.add(
      'unit-not-known',
      line,
      `${cell('id')} in ${cell('unit_name')}`,
      `${meaning.key} in ${meaning.unit}; its figures are unknown`,
    );
    trusted.delete(cell('id'));
  }
  return trusted;
}

async function readFigures(
  file: DatasetFile,
  ownerOf: ReadonlyMap<string, FoodsBuilder>,
  trusted: ReadonlySet<string>,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<void> {
  const noted = new DatasetReport(file.name, issues);
  /** Rank of the id that a figure was taken from, where more than one id may give it. */
  const rankOf = new Map<string, number>();
  for await (const { line, cell } of csvRecords(file, watch, noted)) {
    const nutrient = cell('nutrient_id');
    const meaning = meaningOf.get(nutrient);
    if (meaning === undefined || !trusted.has(nutrient)) continue;
    const id = cell('fdc_id');
    const owner = ownerOf.get(id);
    if (owner === undefined) continue;
    const { key, rank } = meaning;
    const value = noted.figure(cell('amount'), key, line);
    if (value === null) continue;
    const place = `${id} ${key}`;
    const before = rankOf.get(place);
    if (before === rank) noted.add('figure-twice', line, place, 'one amount; the first is kept');
    if (before !== undefined && before <= rank) continue;
    rankOf.set(place, rank);
    owner.set(id, key, value);
  }
}

async function readPortions(
  file: DatasetFile | undefined,
  units: ReadonlyMap<string, string>,
  ownerOf: ReadonlyMap<string, FoodsBuilder>,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<void> {
  if (file === undefined) return;
  for await (const { cell } of csvRecords(file, watch, new DatasetReport(file.name, issues))) {
    const unit = units.get(cell('measure_unit_id'));
    const words = [cell('amount'), unit === 'undetermined' ? '' : unit, cell('portion_description'), cell('modifier')];
    const text = words.filter(word => word !== undefined && word !== '').join(' ');
    ownerOf.get(cell('fdc_id'))?.measure(cell('fdc_id'), text, Number(cell('gram_weight')) || null);
  }
}
