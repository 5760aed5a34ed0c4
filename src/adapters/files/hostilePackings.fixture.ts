import { strToU8 } from 'fflate';
import type { HostileFile } from './hostileFile.fixture.ts';
import { sheetData, type WorkbookParts, workbookFile, workbookXml, zipped } from './workbook.fixture.ts';

const rows = [
  ['name', 'sodiumMg'],
  ['Slices', '200'],
];
const oneSheet = (xml: string, more: Partial<WorkbookParts> = {}): WorkbookParts => ({ sheets: [{ name: 'Shelf', xml }], ...more });
const honest = () => workbookFile(oneSheet(sheetData(rows)));
const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(strToU8(text));
const sheetPart = 'xl/worksheets/sheet1.xml';

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

export const zipBombs: readonly HostileFile[] = [
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

export const otherFiles: readonly HostileFile[] = [
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

export const csvBombs: readonly HostileFile[] = [
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
