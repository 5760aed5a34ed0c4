/** Readers of text and bytes: tables, workbooks, statements, pictures, datasets, what is sealed, and the command line. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { seal, unseal } from '#adapters/clients/seal.ts';
import { fdcTexts, fileOf, foodDes, nutData, weight } from '#adapters/datasets/datasets.fixture.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { decodeText } from '#adapters/files/decodeText.ts';
import { inputLines } from '#adapters/files/inputLines.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { inline, sheetData, workbookXml } from '#adapters/files/workbook.fixture.ts';
import { importLabels } from '#app/importLabels.ts';
import { labsFromTable } from '#app/labs/labsFromTable.ts';
import { photoType } from '#app/photoType.ts';
import { pictures } from '#app/pictures.fixture.ts';
import { unwatched } from '#app/watch.ts';
import { findAdditives } from '#core/additive/findAdditives.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { printStatement } from '#core/statement/printStatement.fixture.ts';
import type { Chance } from './chance.ts';
import { mutateBytes, mutateText, oddTexts } from './mutate.ts';
import type { Reader } from './reader.ts';

const demoTable = readFileSync(join(import.meta.dirname, '../../../data/demo/labels.csv'), 'utf8').split('\n');
/** The headings and a few rows: an input as large as a whole table would show nothing more. */
function fewLabels(chance: Chance): string {
  const from = 1 + chance.below(demoTable.length - 6);
  return [demoTable[0], ...demoTable.slice(from, from + 1 + chance.below(4))].join(chance.of(['\n', '\r\n', '\r']));
}
const labs = [
  'Analyte;LOINC;Value;Unit;Date;Time;Upper normal;Hemolyzed',
  'Potassium;;5.2;mmol/L;2026-06-05;07:30;5.1;',
  ';14879-1;1.9;mmol/L;2026-06-05;;;no',
  'urea nitrogen (BUN);3094-0;70;mg/dl;2026-06-05;;;yes',
].join('\n');
const statements = demoTable.slice(1).map(row => /"([^"]*)"\s*$/.exec(row)?.[1] ?? row.split(',').at(-1) ?? '');
const hard = [
  'PIE (CRUST [FLOUR, WATER), FILLING [CHEESE {MILK, SODIUM PHOSPHATE}]), SALT',
  'CURED WITH WATER, SALT. MAY ALSO CONTAIN SUGAR, CONTAINS 2% OR LESS OF: DIPOTASSIUM PHOSPHATE',
];
const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** As a program writes it, in UTF-16, in Windows-1252, or with bytes changed. */
function asBytes(chance: Chance, text: string): Uint8Array<ArrayBuffer> {
  const way = chance.below(6);
  if (way === 0) return mutateBytes(chance, encoded(text));
  if (way === 1) return new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'));
  if (way === 2) return new Uint8Array(Buffer.from(text, 'latin1'));
  return new Uint8Array(encoded(text));
}

const parts = workbookXml({
  sheets: [
    {
      name: 'Shelf',
      xml: sheetData([
        ['name', 'sodiumMg', 'readOn', '<c t="s"><v>0</v></c>'],
        ['Slices', '<c><v>200</v></c>', '<c s="1"><v>46188</v></c>', '<c t="b"><v>1</v></c>'],
        ['Soup', '<c t="e"><v>#N/A</v></c>', '<c><f>A1+1</f><v>2</v></c>', null],
      ]),
    },
    { name: 'Hidden', xml: `<sheetData><row r="3">${inline('x')}</row></sheetData>`, state: 'hidden' },
  ],
  texts: '<si><t>statement</t></si><si><r><t>a</t></r><r><t>b</t></r></si>',
  styles:
    '<numFmts><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="164"/></cellXfs>',
});
const asU8 = (part: string | Uint8Array): Uint8Array => (typeof part === 'string' ? strToU8(part) : part);
const wholeWorkbook = zipSync(Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, asU8(part)])), { level: 6 });

/** One part changed, in a ZIP file that is whole: the XML behind the ZIP is reached. */
export function changedWorkbook(chance: Chance): Uint8Array<ArrayBuffer> {
  const name = chance.of(Object.keys(parts));
  const part = parts[name]!;
  const changed = typeof part === 'string' ? mutateText(chance, part, '<c r="XFD1" t="s"><v>1</v></c><row r="1048576"/>') : part;
  const files = Object.entries({ ...parts, [name]: changed }).filter(() => !chance.oneIn(40));
  return new Uint8Array(zipSync(Object.fromEntries(files.map(([at, one]) => [at, asU8(one)])), { level: chance.of([0, 1]) }));
}

async function* inPieces(chance: Chance, bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; ) {
    const end = at + 1 + chance.below(200);
    yield bytes.subarray(at, end);
    at = end;
  }
}

const datasets: readonly Readonly<Record<string, string>>[] = [
  { 'FOOD_DES.txt': foodDes, 'NUT_DATA.txt': nutData, 'WEIGHT.txt': weight },
  fdcTexts,
  { 'ABBREV.csv': 'NDB_No,Shrt_Desc,Water_(g),Energ_Kcal\n01009,"CHEESE,CHEDDAR",36.75,403\n' },
];
const key = Buffer.alloc(32, 7);
const sealed = seal(key, Buffer.from('bound'), Buffer.from('{"id":"x","version":1}'));

export const textReaders: readonly Reader[] = [
  {
    name: 'CSV of labels',
    share: 12,
    read: (chance, say) => {
      const bytes = asBytes(chance, mutateText(chance, fewLabels(chance), labs));
      say(bytes);
      return importLabels(readTable(bytes));
    },
  },
  {
    name: 'workbook, its bytes',
    share: 5,
    read: (chance, say) => {
      const bytes = mutateBytes(chance, wholeWorkbook);
      say(bytes);
      return importLabels(readTable(bytes));
    },
  },
  {
    name: 'workbook, its XML',
    share: 5,
    read: (chance, say) => {
      const bytes = changedWorkbook(chance);
      say(bytes);
      return importLabels(readTable(bytes));
    },
  },
  {
    name: 'CSV of laboratory results',
    share: 8,
    read: (chance, say) => {
      const bytes = asBytes(chance, mutateText(chance, labs));
      say(bytes);
      return labsFromTable(readTable(bytes), '2026-11-30');
    },
  },
  {
    name: 'text of unknown encoding',
    share: 5,
    read: (chance, say) => {
      const bytes = mutateBytes(chance, asBytes(chance, chance.of([...oddTexts, labs])));
      say(bytes);
      return decodeText(bytes);
    },
  },
  {
    name: 'lines of input',
    share: 5,
    read: async (chance, say) => {
      const bytes = mutateBytes(chance, asBytes(chance, labs));
      say(bytes);
      for await (const block of inputLines(inPieces(chance, bytes))) void block;
    },
  },
  {
    name: 'statement',
    share: 10,
    read: (chance, say) => {
      const text = mutateText(chance, chance.of(chance.oneIn(4) ? hard : statements), chance.of(statements));
      say(text);
      const { value, tokens } = parseStatement(text);
      findAdditives(value, tokens);
      return parseStatement(printStatement(value));
    },
  },
  {
    name: 'picture',
    share: 8,
    read: (chance, say) => {
      const bytes = mutateBytes(chance, chance.of(Object.values(pictures)));
      say(bytes);
      return photoType(bytes);
    },
  },
  {
    name: 'composition dataset',
    share: 3,
    read: async (chance, say) => {
      const files = { ...chance.of(datasets) };
      const name = chance.of(Object.keys(files));
      files[name] = mutateText(chance, files[name]!);
      say(files);
      return readDatasets(
        Object.entries(files).map(([at, content]) => fileOf(at, content, 1 + chance.below(500))),
        '',
        unwatched,
      );
    },
  },
  {
    name: 'sealed text',
    share: 4,
    read: (chance, say) => {
      const bytes = mutateBytes(chance, sealed);
      say(bytes);
      const clear = unseal(key, Buffer.from('bound'), Buffer.from(bytes));
      if (clear !== undefined && !Buffer.from(bytes).equals(sealed)) throw new Error('what was changed has opened');
    },
  },
];
