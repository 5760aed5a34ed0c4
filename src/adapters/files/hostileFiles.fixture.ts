import type { HostileFile } from './hostileFile.fixture.ts';
import { csvBombs, otherFiles, zipBombs } from './hostilePackings.fixture.ts';
import { inline, sheetData, type WorkbookParts, workbookFile } from './workbook.fixture.ts';

const rows = [
  ['name', 'sodiumMg'],
  ['Slices', '200'],
];
const oneSheet = (xml: string, more: Partial<WorkbookParts> = {}): WorkbookParts => ({ sheets: [{ name: 'Shelf', xml }], ...more });
const sheet = (xml: string, more: Partial<WorkbookParts> = {}) => workbookFile(oneSheet(xml, more));
const honest = () => workbookFile(oneSheet(sheetData(rows)));
const sheetPart = 'xl/worksheets/sheet1.xml';
const head = `<row>${inline('name')}${inline('sodiumMg')}</row>`;

const cellBombs: readonly HostileFile[] = [
  {
    name: 'one stray cell in the last column of the last row',
    make: () => sheet(`<sheetData>${head}<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>`),
    gives: 'read',
  },
  {
    name: 'a stray cell in the last column of 50,000 rows',
    make: () =>
      sheet(
        `<sheetData>${head}${Array.from({ length: 50_000 }, (_, at) => `<row><c r="XFD${at + 2}"><v>1</v></c></row>`).join('')}</sheetData>`,
      ),
    gives: 'read',
  },
  {
    name: 'headings in 16,384 columns and 100,000 empty rows',
    make: () => sheet(`<sheetData><row>${'<c><v>1</v></c>'.repeat(16_384)}</row>${'<row><c/></row>'.repeat(100_000)}</sheetData>`),
    gives: 'read',
  },
  {
    name: 'headings in 1,000 columns and 100,000 rows of one cell',
    make: () => sheet(`<sheetData><row>${'<c><v>1</v></c>'.repeat(1_000)}</row>${'<row><c><v>1</v></c></row>'.repeat(99_000)}</sheetData>`),
    gives: 'table-too-large',
  },
  {
    name: 'a million rows',
    make: () => sheet(`<sheetData>${'<row><c><v>1</v></c></row>'.repeat(1_000_000)}</sheetData>`),
    gives: 'table-too-large',
  },
  {
    name: 'a row of a million cells',
    make: () => sheet(`<sheetData><row>${'<c><v>1</v></c>'.repeat(1_000_000)}</row></sheetData>`),
    gives: 'workbook-not-readable',
  },
  { name: 'a dimension of the whole sheet', make: () => sheet(`<dimension ref="A1:XFD1048576"/>${sheetData(rows)}`), gives: 'read' },
  { name: 'no dimension, no references', make: honest, gives: 'read' },
  {
    name: 'a merge over the whole sheet',
    make: () => sheet(`${sheetData(rows)}<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`),
    gives: 'read',
  },
  {
    name: 'a hundred thousand merges',
    make: () => sheet(`${sheetData(rows)}<mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(100_000)}</mergeCells>`),
    gives: 'table-too-large',
  },
  {
    name: 'a long formula in 90,000 cells',
    make: () => sheet(`<sheetData>${head}${`<row><c><f>${'A1+'.repeat(300)}1</f><v>1</v></c></row>`.repeat(90_000)}</sheetData>`),
    gives: 'read',
  },
  {
    name: 'two million texts that no cell names',
    make: () => sheet(sheetData(rows), { texts: '<si><t>abcdefghij</t></si>'.repeat(2_000_001) }),
    gives: 'table-too-large',
  },
  {
    name: 'one long text named by 90,000 cells',
    make: () =>
      sheet(`<sheetData>${head}${'<row><c t="s"><v>0</v></c></row>'.repeat(90_000)}</sheetData>`, {
        texts: `<si><t>${'x'.repeat(32_767)}</t></si>`,
      }),
    gives: 'table-too-large',
  },
  {
    name: 'a text of 60 MB',
    make: () => sheet(`<sheetData><row>${inline('x'.repeat(60_000_000))}</row></sheetData>`),
    gives: 'table-too-large',
  },
  {
    name: 'a text in two million runs',
    make: () => sheet(`<sheetData><row><c t="inlineStr"><is>${'<r><t>x</t></r>'.repeat(2_000_000)}</is></c></row></sheetData>`),
    gives: 'table-too-large',
  },
  {
    name: 'half a million styles',
    make: () => sheet(sheetData(rows), { styles: `<cellXfs>${'<xf numFmtId="14"/>'.repeat(500_000)}</cellXfs>` }),
    gives: 'workbook-not-readable',
  },
  {
    name: 'two thousand sheets',
    make: () => workbookFile({ sheets: Array.from({ length: 2_000 }, (_, at) => ({ name: `S${at}`, xml: '<sheetData/>' })) }),
    gives: 'workbook-not-readable',
  },
];

const xmlBombs: readonly HostileFile[] = [
  {
    name: 'entities that grow to a billion',
    make: () =>
      workbookFile(
        oneSheet('', {
          parts: {
            [sheetPart]: `<!DOCTYPE w [<!ENTITY a "ha">${Array.from({ length: 30 }, (_, at) => `<!ENTITY ${'b'.repeat(at + 1)} "&${at === 0 ? 'a' : 'b'.repeat(at)};&${at === 0 ? 'a' : 'b'.repeat(at)};">`).join('')}]><worksheet>${sheetData([[`&${'b'.repeat(30)};`]])}</worksheet>`,
          },
        }),
      ),
    gives: 'workbook-not-readable',
  },
  {
    name: 'an entity that reads a file of this machine',
    make: () =>
      workbookFile(
        oneSheet('', {
          parts: {
            [sheetPart]: `<!DOCTYPE w [<!ENTITY x SYSTEM "file:///etc/passwd">]><worksheet>${sheetData([['&x;']])}</worksheet>`,
          },
        }),
      ),
    gives: 'workbook-not-readable',
  },
  { name: 'an entity that nobody made', make: () => sheet(sheetData([['&x;']])), gives: 'workbook-not-readable' },
  { name: 'a million elements inside each other', make: () => sheet('<a>'.repeat(1_000_000)), gives: 'workbook-not-readable' },
  {
    name: 'an element with 200,000 attributes',
    make: () => sheet(`<sheetData><row ${Array.from({ length: 200_000 }, (_, at) => `a${at}="1"`).join(' ')}/></sheetData>`),
    gives: 'table-too-large',
  },
  { name: 'a comment of 60 MB', make: () => sheet(`<!--${' '.repeat(60_000_000)}-->${sheetData(rows)}`), gives: 'table-too-large' },
  { name: 'NUL in XML', make: () => sheet(sheetData([['a\0b']])), gives: 'workbook-not-readable' },
  {
    name: 'UTF-16',
    make: () =>
      workbookFile(
        oneSheet('', {
          parts: {
            [sheetPart]: new Uint8Array(
              Buffer.from(`\uFEFF<?xml version="1.0" encoding="UTF-16"?><worksheet>${sheetData(rows)}</worksheet>`, 'utf16le'),
            ),
          },
        }),
      ),
    gives: 'read',
  },
  {
    name: 'bytes that are no UTF-8',
    make: () => workbookFile(oneSheet('', { parts: { [sheetPart]: Uint8Array.of(60, 97, 62, 0xff, 0xfe, 0xff) } })),
    gives: 'workbook-not-readable',
  },
  ...[
    '<row r="-1"/>',
    '<row r="NaN"/>',
    '<row r="1e3"><c r="A1"/></row>',
    '<row r="2"/><row r="1"/>',
    '<row r="1048577"/>',
    '<row><c r="XFE1"/></row>',
    '<row><c r="B1"/><c r="A1"/></row>',
    '<row><c r="A0"/></row>',
    '<row><c t="s"><v>-1</v></c></row>',
    '<row><c t="s"><v>99</v></c></row>',
  ].map(
    (xml): HostileFile => ({
      name: `a place that is none: ${xml}`,
      make: () => sheet(`<sheetData>${xml}</sheetData>`),
      gives: 'workbook-not-readable',
    }),
  ),
];

export const hostileFiles: readonly HostileFile[] = [...cellBombs, ...xmlBombs, ...zipBombs, ...otherFiles, ...csvBombs];
