import { expect, test } from 'vitest';
import { unwatched } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { referenceFileText } from '#core/reference/referenceFile.ts';
import { referenceNutrients } from '#core/reference/referenceFood.ts';
import { fdcFiles, fdcTexts, fileOf, foodDes, nutData, sr28Files } from './datasets.fixture.ts';
import { readDatasets } from './readDatasets.ts';

const read = (files: Parameters<typeof readDatasets>[0], folder = '') => readDatasets(files, folder, unwatched);
async function fault(work: Promise<unknown>): Promise<Fault> {
  const error = await work.then(
    () => undefined,
    thrown => thrown,
  );
  expect(error).toBeInstanceOf(Fault);
  return error as Fault;
}

test('[REF-12] SR in ASCII: names, groups, figures and measures as its files have them', async () => {
  const { value, issues } = await read(sr28Files(), 'sr28asc');
  expect(issues).toEqual([]);
  const [table] = value;
  expect(table).toMatchObject({ dataset: 'usda-sr', edition: 'release 28' });
  expect(table!.foods.map(({ number }) => number)).toEqual(['01009', '03068', '11090', '11241', '11242', '15008']);
  const [cheddar, , broccoli] = table!.foods;
  // SR28 11090: 66 mg of phosphorus, 316 mg of potassium, 89.3 g of water in 100 g; a cup chopped weighs 91 g.
  expect(broccoli).toMatchObject({
    description: 'Broccoli, raw',
    group: '1100',
    per100G: { phosphorusMg: 66, potassiumMg: 316, waterG: 89.3 },
    household: [{ text: '1 cup chopped', grams: 91 }],
  });
  expect(cheddar!.per100G).toMatchObject({ phosphorusMg: 473, potassiumMg: 76, proteinG: 24.04 });
});

test('[REF-12] what has no line, and what has an empty field, is unknown and never zero', async () => {
  const [table] = (await read(sr28Files())).value;
  const [cheddar] = table!.foods;
  const carp = table!.foods.at(-1)!;
  expect(cheddar!.per100G.fiberG).toBeNull();
  expect(carp.per100G.totalSugarsG).toBeNull();
  const known = referenceNutrients.filter(key => carp.per100G[key] !== null);
  expect(known).toEqual(['proteinG', 'phosphorusMg', 'potassiumMg']);
});

test('[REF-12] letters of ISO 8859-1 and CRLF are read; without a folder name the newest month tells the edition', async () => {
  const latin = Uint8Array.from(foodDes.replace('Kohlrabi, raw', 'Jalapeño, raw').replaceAll('\n', '\r\n'), one => one.charCodeAt(0));
  const { value, issues } = await read([fileOf('food_des.TXT', latin), fileOf('Nut_Data.txt', nutData)]);
  expect(issues).toEqual([]);
  expect(value[0]!.foods[3]!.description).toBe('Jalapeño, raw');
  expect(value[0]!.edition).toBe('newest figure of 2015-03');
});

test('[REF-12] FoodData Central: foundation and legacy are two tables; samples and branded foods are passed over', async () => {
  const { value, issues } = await read(fdcFiles());
  expect(issues).toEqual([]);
  expect(value.map(({ dataset, edition, foods }) => [dataset, edition, foods.length])).toEqual([
    ['fdc-foundation', 'foods published up to 2024-04-18', 1],
    ['fdc-sr-legacy', 'foods published up to 2019-04-01', 1],
  ]);
  const [foundation, legacy] = value;
  // Energy by specific factors goes before general ones, whatever their order.
  expect(foundation!.foods[0]).toMatchObject({
    number: 'FDC 102',
    group: '1100',
    per100G: { energyKcal: 32, phosphorusMg: 66, potassiumMg: null, sodiumMg: null },
    household: [{ text: '1.0 cup chopped', grams: 91 }],
  });
  expect(legacy!.foods[0]).toMatchObject({
    number: '11241',
    per100G: { energyKcal: 27, phosphorusMg: 46, potassiumMg: 350 },
    household: [{ text: '1.0 cup', grams: 135 }],
  });
});

test('[REF-12] a nutrient in another unit than expected is unknown, not wrong by a thousand', async () => {
  const files = fdcFiles({ 'nutrient.csv': fdcTexts['nutrient.csv'].replace('"Phosphorus, P","MG"', '"Phosphorus, P","UG"') });
  const { value, issues } = await read(files);
  expect(issues).toMatchObject([{ code: 'unit-not-known', place: { file: 'nutrient.csv', line: 3 } }]);
  expect(value[1]!.foods[0]!.per100G).toMatchObject({ phosphorusMg: null, potassiumMg: 350 });
});

test('[REF-12] the abbreviated file: capitals as they stand, alcohol unknown, the group from the number', async () => {
  const head = 'NDB_No,Shrt_Desc,Water_(g),Energ_Kcal,Protein_(g),Phosphorus_(mg),Potassium_(mg),GmWt_1,GmWt_Desc1,GmWt_2,GmWt_Desc2';
  const text = `\uFEFF${head}\n11241,"KOHLRABI,RAW",91,27,1.7,46,350,135,1 cup,,\n43299,"SOYBEAN,CURD CHEESE",70.9,151,12.5,,199,,,,\n`;
  const { value, issues } = await read([fileOf('usda-sr28.csv', text)]);
  expect(issues).toEqual([]);
  expect(value[0]).toMatchObject({ dataset: 'usda-sr', edition: 'release 28' });
  expect(value[0]!.foods).toMatchObject([
    { number: '11241', group: '1100', per100G: { phosphorusMg: 46, alcoholG: null }, household: [{ text: '1 cup', grams: 135 }] },
    { number: '43299', group: null, per100G: { phosphorusMg: null, potassiumMg: 199 }, household: [] },
  ]);
});

test('[REF-12] a bad row is named by file and line, left out, and the others are read', async () => {
  const { value, issues } = await read(
    sr28Files({
      'FOOD_DES.txt': `${foodDes}~~^~1100~^~No number~\n~11090~^~1100~^~Broccoli once more~\n`,
      'NUT_DATA.txt': `${nutData}~11241~^~307~^twenty^1^\n~11241~^~203~^1700^1^\n~11241~^~305~^47^1^\n~11241~^~306~\n~99999~^~305~^1^1^\n`,
    }),
  );
  expect(issues.map(({ code, place }) => [code, place.file, place.line])).toEqual([
    ['row-without-number', 'FOOD_DES.txt', 7],
    ['food-twice', 'FOOD_DES.txt', 8],
    ['figure-not-readable', 'NUT_DATA.txt', 16],
    ['figure-impossible', 'NUT_DATA.txt', 17],
    ['figure-twice', 'NUT_DATA.txt', 18],
    ['row-too-short', 'NUT_DATA.txt', 19],
    ['row-without-number', 'NUT_DATA.txt', 20],
  ]);
  expect(value[0]!.foods[3]!.per100G).toMatchObject({ sodiumMg: null, proteinG: null, phosphorusMg: 46 });
});

test('[REF-12] a quotation mark that never closes takes its own row along, not the file', async () => {
  const rows = Array.from({ length: 80 }, (_, at) => `"${at + 20}","101","1051","91.0","","","","","","",""`).join('\n');
  const broken = fdcTexts['food_nutrient.csv'].replace('"1","101","1008","27.0"', '"1","101","1008","27.0');
  const { value, issues } = await read(fdcFiles({ 'food_nutrient.csv': `${broken}${rows}\n` }));
  expect(issues[0]).toMatchObject({ code: 'quote-not-closed', place: { file: 'food_nutrient.csv', line: 2 } });
  expect(value[1]!.foods[0]!.per100G).toMatchObject({ phosphorusMg: 46, potassiumMg: 350, waterG: 91 });
});

test('[REF-12] a reference file is read as well', async () => {
  const { value } = await read(fdcFiles());
  expect((await read([fileOf('larger.json', referenceFileText(value))])).value).toEqual(value);
  expect((await fault(read([fileOf('larger.json', '{"platewrightReference":1}')]))).code).toBe('reference-not-valid');
  expect((await fault(read([fileOf('larger.json', 'no json')]))).message).toContain('"larger.json" is not JSON');
});

test.each([
  ['nothing', [], 'holds no file'],
  ['something else', [fileOf('notes.txt', 'x'), fileOf('labels.csv', 'name,sodiumMg\n')], 'none of the 2 files'],
  ['half of SR', [fileOf('FOOD_DES.txt', foodDes)], 'NUT_DATA.txt is missing'],
  ['half of FoodData Central', [fileOf('food.csv', fdcTexts['food.csv'])], 'food_nutrient.csv is missing'],
  ['an archive', [fileOf('sr28asc.zip', 'PK')], 'unpacked'],
  ['branded foods alone', fdcFiles({ 'food.csv': '"fdc_id","data_type"\n"104","branded_food"\n' }), 'no food'],
  ['foods without figures', sr28Files({ 'NUT_DATA.txt': '' }), 'not one figure'],
])('[REF-12] a folder with %s is refused with the next step', async (_, files, words) => {
  const { code, message, nextStep } = await fault(read(files, 'here'));
  expect([code, message]).toEqual(['reference-not-recognized', expect.stringContaining(words)]);
  expect(nextStep).toContain('FOOD_DES.txt');
});

test('[REF-12] reading is told in megabytes and stops when nobody waits any more', async () => {
  const many = nutData + '~11090~^~401~^89.2^7^0.1^~1~^\n'.repeat(80_000);
  const steps: string[] = [];
  const files = [fileOf('FOOD_DES.txt', foodDes), fileOf('NUT_DATA.txt', many, 65_536)];
  await readDatasets(files, '', { step: async (what, done, of) => void steps.push(`${what} ${done} of ${of}`) });
  expect(steps).toEqual(['Megabytes of NUT_DATA.txt 1 of 3', 'Megabytes of NUT_DATA.txt 2 of 3']);
  const stopped = readDatasets(files, '', {
    step: async () => {
      throw new Fault('work-cancelled', 'The work was stopped before its end.');
    },
  });
  expect((await fault(stopped)).code).toBe('work-cancelled');
});
