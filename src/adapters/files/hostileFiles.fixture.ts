import { strToU8 } from 'fflate';
import { inline, sheetData, type WorkbookParts, workbookFile, workbookXml, zipped } from './workbook.fixture.ts';

/** A file made to do harm, or broken as files break. Made only when it is asked for: some are large. */
export interface HostileFile {
  readonly name: string;
  readonly make: () => Uint8Array<ArrayBuffer>;
  /** The fault that refuses it, or that it is read. */
  readonly gives: string;
}

const rows = [
  ['name', 'sodiumMg'],
  ['Slices', '200'],
];
const oneSheet = (xml: string, more: Partial<WorkbookParts> = {}): WorkbookParts => ({ sheets: [{ name: 'Shelf', xml }], ...more });
const sheet = (xml: string, more: Partial<WorkbookParts> = {}) => workbookFile(oneSheet(xml, more));
const honest = () => workbookFile(oneSheet(sheetData(rows)));
const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(strToU8(text));
const sheetPart = 'xl/worksheets/sheet1.xml';
const head = `<row>${inline('name')}${inline('sodiumMg')}</row>`;

/** A file with some of its bytes set anew. */
function spoiled(bytes: Uint8Array<ArrayBuffer>, change: (view: DataView, bytes: Uint8Array) => void): Uint8Array<ArrayBuffer> {
  const copy = bytes.slice();
  change(new DataView(copy.buffer), copy);
  return copy;
}

/** Where the list of a ZIP file names a part, the last one of that name. */
function listed(bytes: Uint8Array, name: string): number {
  return Buffer.from(bytes).lastIndexOf(name) - 46;
}

function written(size: number, text: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.alloc(size, text));
}

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

const zipBombs: readonly HostileFile[] = [
  {
    name: '60 MB of blanks in 60 kB',
    make: () => workbookFile(oneSheet('', { parts: { [sheetPart]: written(60 * 2 ** 20, ' ') } })),
    gives: 'table-too-large',
  },
  {
    name: 'the same, and it says that it is small',
    make: () => {
      const bomb = workbookFile(oneSheet('', { parts: { [sheetPart]: written(60 * 2 ** 20, ' ') } }));
      return spoiled(bomb, view => view.setUint32(listed(bomb, sheetPart) + 24, 1_000, true));
    },
    gives: 'workbook-not-readable',
  },
  {
    name: 'ZIP files in ZIP files',
    make: () => zipped({ 'a.zip': zipped({ 'b.zip': zipped({ 'c.txt': written(50_000_000, '0') }) }) }),
    gives: 'workbook-of-another-kind',
  },
  {
    name: 'a part that says it has 4 GB',
    make: () => spoiled(honest(), (view, bytes) => view.setUint32(listed(bytes, sheetPart) + 24, 0xfffffffe, true)),
    gives: 'table-too-large',
  },
  {
    name: 'a part that leads out of the file',
    make: () => spoiled(honest(), (view, bytes) => view.setUint32(listed(bytes, sheetPart) + 20, 0x7fffffff, true)),
    gives: 'workbook-not-readable',
  },
  {
    name: 'a wrong checksum',
    make: () => spoiled(honest(), (view, bytes) => view.setUint32(listed(bytes, 'xl/workbook.xml') + 16, 1, true)),
    gives: 'workbook-not-readable',
  },
  {
    name: 'two parts of one name',
    make: () => {
      const other = 'xl/worksheets/sheet2.xml';
      const twice = workbookFile(oneSheet(sheetData(rows), { parts: { [other]: 'x' } }));
      return spoiled(twice, (_, bytes) => bytes.set(strToU8(sheetPart), listed(twice, other) + 46));
    },
    gives: 'workbook-not-readable',
  },
  {
    name: 'names that lead out of a folder',
    make: () => workbookFile(oneSheet(sheetData(rows), { parts: { '../../../../etc/cron.d/x': 'x', '/etc/passwd': 'x', 'C:\\x': 'x' } })),
    gives: 'read',
  },
  {
    name: 'a target that leads out of the file',
    make: () =>
      workbookFile(
        oneSheet('', {
          parts: {
            'xl/_rels/workbook.xml.rels':
              '<Relationships><Relationship Id="rId1" Type="a/worksheet" Target="../../../../etc/passwd"/></Relationships>',
          },
        }),
      ),
    gives: 'table-without-headings',
  },
  {
    name: 'twenty thousand parts',
    make: () => zipped(Object.fromEntries(Array.from({ length: 20_000 }, (_, at) => [`p${at}`, 'x'])), 0),
    gives: 'workbook-not-readable',
  },
  {
    name: 'an encrypted part',
    make: () => spoiled(honest(), (view, bytes) => view.setUint16(listed(bytes, sheetPart) + 8, 1, true)),
    gives: 'workbook-encrypted',
  },
  {
    name: 'a way of packing that is none',
    make: () => spoiled(honest(), (view, bytes) => view.setUint16(listed(bytes, sheetPart) + 10, 99, true)),
    gives: 'workbook-not-readable',
  },
  {
    name: 'no list of sheets',
    make: () => zipped({ ...workbookXml(oneSheet(sheetData(rows))), 'xl/workbook.xml': '' }),
    gives: 'workbook-not-readable',
  },
  ...Array.from(
    { length: 9 },
    (_, at): HostileFile => ({
      name: `cut off after ${at + 1} tenths`,
      make: () => honest().slice(0, Math.floor((honest().length * (at + 1)) / 10)),
      gives: 'workbook-not-readable',
    }),
  ),
];

const otherFiles: readonly HostileFile[] = [
  {
    name: 'a workbook with a password',
    make: () =>
      new Uint8Array(
        Buffer.concat([Buffer.from('d0cf11e0a1b11ae1', 'hex'), Buffer.alloc(1024), Buffer.from('EncryptedPackage', 'utf16le')]),
      ),
    gives: 'workbook-encrypted',
  },
  {
    name: 'XLS',
    make: () => new Uint8Array(Buffer.concat([Buffer.from('d0cf11e0a1b11ae1', 'hex'), Buffer.alloc(4096)])),
    gives: 'workbook-of-another-kind',
  },
  { name: 'XLS of 1993', make: () => new Uint8Array(Buffer.from('090808000005050000000000', 'hex')), gives: 'workbook-of-another-kind' },
  { name: 'XLSB', make: () => zipped({ 'xl/workbook.bin': Uint8Array.of(1, 2, 3) }), gives: 'workbook-of-another-kind' },
  {
    name: 'ODS',
    make: () => zipped({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<a/>' }),
    gives: 'workbook-of-another-kind',
  },
];

const csvBombs: readonly HostileFile[] = [
  { name: 'a line of 49 MB', make: () => written(49 * 2 ** 20, 'x'), gives: 'table-too-large' },
  { name: 'headings in half a million columns', make: () => bytesOf(`name,sodiumMg${',a'.repeat(500_000)}\na,1\n`), gives: 'read' },
  { name: 'a million rows of CSV', make: () => bytesOf(`name,sodiumMg\n${'a,1\n'.repeat(1_000_000)}`), gives: 'table-too-large' },
  { name: '40 MB of quotation marks', make: () => bytesOf(`name,sodiumMg\n${'"'.repeat(40_000_000)}`), gives: 'table-too-large' },
  {
    name: '8 million quotes that never close',
    make: () => bytesOf(`name,sodiumMg\n${'"a,1\n'.repeat(8_000_000)}`),
    gives: 'table-too-large',
  },
  {
    name: 'quotes that close one row late',
    make: () => bytesOf(`name,sodiumMg\n${'"a,1\nb"c,2\n'.repeat(1_000_000)}`),
    gives: 'table-too-large',
  },
  { name: '40 MB of NUL', make: () => written(40 * 2 ** 20, '\0'), gives: 'table-too-large' },
  { name: '40 MB of line ends', make: () => written(40 * 2 ** 20, '\n'), gives: 'table-too-large' },
  { name: '40 MB of carriage returns', make: () => written(40 * 2 ** 20, '\r'), gives: 'table-too-large' },
  { name: 'half a character of UTF-16', make: () => Uint8Array.of(0xff, 0xfe, 0x00, 0xd8, 0x61), gives: 'read' },
];

export const hostileFiles: readonly HostileFile[] = [...cellBombs, ...xmlBombs, ...zipBombs, ...otherFiles, ...csvBombs];
