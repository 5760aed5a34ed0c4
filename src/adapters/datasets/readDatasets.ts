import type { DatasetFile, DatasetIssueCode, ReadDatasets } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import { Fault, type Issue } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import { referenceFileFromJson } from '#core/reference/referenceFile.ts';
import { readFdc } from './fdcCsv/readFdc.ts';
import { readAbbreviated } from './sr28Abbreviated/readAbbreviated.ts';
import { readSr28 } from './sr28Ascii/readSr28.ts';

/** A reference file of all three tables has some 5 MB; more is none. */
const largestReferenceFile = 100 * 1024 * 1024;

/**
 * Tells by their names which dataset some files are, and reads it.
 *
 * @throws Fault reference-not-recognized, reference-not-valid, work-cancelled.
 */
export const readDatasets: ReadDatasets = async (files, folder, watch) => {
  const issues: Issue<DatasetIssueCode>[] = [];
  const value = await tablesOf(files, folder, watch, issues);
  if (value === undefined) throw new Fault('reference-not-recognized', notRecognized(files, folder));
  const full = value.filter(({ foods }) => foods.length > 0);
  if (full.length === 0) throw new Fault('reference-not-recognized', 'The files hold no food that can be read.');
  if (full.every(({ foods }) => foods.every(({ per100G }) => Object.values(per100G).every(figure => figure === null))))
    throw new Fault('reference-not-recognized', 'The files hold foods, and not one figure of them.');
  return { value: full, issues };
};

async function tablesOf(
  files: readonly DatasetFile[],
  folder: string,
  watch: Watch,
  issues: Issue<DatasetIssueCode>[],
): Promise<readonly LargerTable[] | undefined> {
  const byName = new Map(files.map(file => [file.name.toLowerCase(), file]));
  const [sr, srFigures] = [byName.get('food_des.txt'), byName.get('nut_data.txt')];
  if (sr !== undefined && srFigures !== undefined)
    return [await readSr28({ foods: sr, figures: srFigures, weights: byName.get('weight.txt') }, folder, watch, issues)];
  const [fdc, fdcFigures] = [byName.get('food.csv'), byName.get('food_nutrient.csv')];
  if (fdc !== undefined && fdcFigures !== undefined) return readFdc({ foods: fdc, figures: fdcFigures, others: byName }, watch, issues);
  for (const file of files) {
    if (/\.json$/i.test(file.name)) return readReferenceFile(file);
    if (/\.csv$/i.test(file.name) && (await firstLine(file)).includes('NDB_No'))
      return [await readAbbreviated(file, folder, watch, issues)];
  }
  return undefined;
}

async function readReferenceFile(file: DatasetFile): Promise<readonly LargerTable[]> {
  if (file.bytes > largestReferenceFile) throw new Fault('reference-not-valid', `"${file.name}" is larger than a reference file can be.`);
  const chunks: Uint8Array[] = [];
  for await (const bytes of file.open()) chunks.push(bytes);
  return referenceFileFromJson(Buffer.concat(chunks).toString('utf8'), file.name);
}

async function firstLine(file: DatasetFile): Promise<string> {
  let text = '';
  for await (const bytes of file.open()) {
    text += Buffer.from(bytes).toString('latin1');
    if (text.includes('\n') || text.length > longestHeading) break;
  }
  return text.split('\n', 1)[0]!;
}

const longestHeading = 16_384;

function notRecognized(files: readonly DatasetFile[], folder: string): string {
  const where = folder === '' ? 'The chosen files' : `"${folder}"`;
  const names = new Set(files.map(({ name }) => name.toLowerCase()));
  const half = [
    ['food_des.txt', 'NUT_DATA.txt'],
    ['nut_data.txt', 'FOOD_DES.txt'],
    ['food.csv', 'food_nutrient.csv'],
    ['food_nutrient.csv', 'food.csv'],
  ].find(([one]) => names.has(one!));
  if (half !== undefined) return `${where}: ${half[1]} is missing beside ${half[0]}.`;
  if (files.some(({ name }) => /\.zip$/i.test(name))) return `${where}: a ZIP archive has to be unpacked first.`;
  return files.length === 0
    ? `${where} holds no file.`
    : `${where}: none of the ${files.length} files belongs to a dataset that is known here.`;
}
