import { posix } from 'node:path';
import { Fault } from '#core/errors.ts';
import { type DateSystem, formatKind, type NumberFormat } from './cellText.ts';
import { broken, type ZipParts } from './unpack.ts';
import { walkXml } from './walkXml.ts';

export interface Sheet {
  readonly name: string;
  readonly isHidden: boolean;
  /** The part that holds it. */
  readonly part: string;
}

export interface Workbook {
  readonly sheets: readonly Sheet[];
  readonly dates: DateSystem;
  readonly texts: readonly string[];
  /** By the number of a cell's style; undefined for what is shown as it stands. */
  readonly formats: readonly (NumberFormat | undefined)[];
}

/** All texts together, since a sheet names each by its number and may name it again and again. */
const mostSharedCharacters = 64 * 2 ** 20;
const mostSharedTexts = 2_000_000;
/** Spreadsheets allow 32,767 characters a cell; what goes far beyond is no text of a cell. */
const longestText = 2 ** 20;
const mostSheets = 1_000;
const mostStyles = 100_000;

/** What stands around the sheets of a workbook: their list, the texts that they share, how numbers are shown. */
export function workbookOf(parts: ZipParts): Workbook {
  const path = relations(parts, '').find(({ kind }) => kind === 'officeDocument')?.target ?? 'xl/workbook.xml';
  if (!parts.has(path)) {
    if (parts.names().some(name => /^content\.xml$|\.bin$/.test(name)))
      throw new Fault('workbook-of-another-kind', 'The file is an XLSB or ODS workbook, not XLSX.');
    throw new Fault('workbook-of-another-kind', 'The file is a packed file, but no XLSX workbook.');
  }
  if (path.endsWith('.bin')) throw new Fault('workbook-of-another-kind', 'The file is an XLSB workbook, not XLSX.');
  const related = relations(parts, path);
  const partOf = (kind: string): string | undefined => related.find(one => one.kind === kind && parts.has(one.target))?.target;
  const { sheets, dates } = sheetsOf(parts, path, id => related.find(one => one.id === id && one.kind === 'worksheet')?.target);
  const textsPart = partOf('sharedStrings');
  const stylesPart = partOf('styles');
  return {
    sheets,
    dates,
    texts: textsPart === undefined ? [] : sharedTexts(parts, textsPart),
    formats: stylesPart === undefined ? [] : cellFormats(parts, stylesPart),
  };
}

interface Relation {
  readonly id: string;
  /** The last word of its type: that of the strict form begins otherwise. */
  readonly kind: string;
  readonly target: string;
}

/** What a part leads to, as paths within the file (ECMA-376 part 2, 6.5). */
function relations(parts: ZipParts, path: string): Relation[] {
  const list = posix.join(posix.dirname(path), '_rels', `${posix.basename(path)}.rels`).replace(/^\.\//, '');
  if (!parts.has(list)) return [];
  const found: Relation[] = [];
  walkXml(parts, list, {
    open: (name, attribute) => {
      if (name !== 'Relationship' || attribute('TargetMode') === 'External') return true;
      const target = attribute('Target') ?? '';
      found.push({
        id: attribute('Id') ?? '',
        kind: (attribute('Type') ?? '').split('/').at(-1)!,
        target: target.startsWith('/') ? target.slice(1) : posix.normalize(posix.join(posix.dirname(path), target)),
      });
      return found.length < 10_000;
    },
  });
  return found;
}

function sheetsOf(parts: ZipParts, path: string, partOf: (id: string) => string | undefined) {
  const sheets: Sheet[] = [];
  let dates: DateSystem = 1900;
  walkXml(parts, path, {
    open: (name, attribute) => {
      if (name === 'workbookPr' && ['1', 'true', 'on'].includes(attribute('date1904') ?? '')) dates = 1904;
      if (name !== 'sheet') return true;
      const part = partOf(attribute('id') ?? '');
      // A sheet of charts or macros has no cells.
      if (part !== undefined && parts.has(part))
        sheets.push({ name: (attribute('name') ?? '').slice(0, 31), isHidden: (attribute('state') ?? 'visible') !== 'visible', part });
      if (sheets.length > mostSheets) throw broken(`it has more than ${mostSheets} sheets`);
      return true;
    },
  });
  return { sheets, dates };
}

function sharedTexts(parts: ZipParts, part: string): string[] {
  const texts: string[] = [];
  let characters = 0;
  const text = new CellText(whole => {
    characters += whole.length;
    texts.push(whole);
    if (characters > mostSharedCharacters || texts.length > mostSharedTexts)
      throw new Fault('table-too-large', 'The workbook holds more texts than a table of labels can have.');
  });
  walkXml(parts, part, {
    open: name => {
      text.open(name);
      return true;
    },
    close: name => {
      text.close(name, 'si');
      return true;
    },
    text: piece => text.add(piece),
  });
  return texts;
}

/**
 * The text of a cell: plain, or in runs with fonts of their own (ECMA-376 part 1, 18.4.8). How it is pronounced (`rPh`) is not part of it.
 */
export class CellText {
  private readonly take: (whole: string) => void;
  private whole = '';
  private isText = false;
  private isPhonetic = false;

  constructor(take: (whole: string) => void) {
    this.take = take;
  }

  open(name: string): void {
    if (name === 'rPh') this.isPhonetic = true;
    if (name === 't') this.isText = !this.isPhonetic;
  }

  add(piece: string): void {
    if (!this.isText) return;
    this.whole += piece;
    if (this.whole.length > longestText) throw new Fault('table-too-large', 'A text in the workbook is longer than a cell can be.');
  }

  /** `end` is the element that holds one text. */
  close(name: string, end: string): void {
    if (name === 't') this.isText = false;
    if (name === 'rPh') this.isPhonetic = false;
    if (name !== end) return;
    this.take(unescaped(this.whole));
    this.whole = '';
  }
}

/** Characters that XML has no place for stand as `_x000D_` (ECMA-376 part 1, 22.9.2.19). */
export function unescaped(text: string): string {
  return text.includes('_x') ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16))) : text;
}

function cellFormats(parts: ZipParts, part: string): (NumberFormat | undefined)[] {
  const codes = new Map<number, string>();
  const formats: (NumberFormat | undefined)[] = [];
  let isOfCells = false;
  walkXml(parts, part, {
    open: (name, attribute) => {
      if (name === 'numFmt') codes.set(Number(attribute('numFmtId')), (attribute('formatCode') ?? '').slice(0, 255));
      if (name === 'cellXfs') isOfCells = true;
      if (name === 'xf' && isOfCells) {
        const id = Number(attribute('numFmtId') ?? 0);
        formats.push(formatKind(id, codes.get(id)));
      }
      if (formats.length > mostStyles || codes.size > mostStyles) throw broken(`it has more than ${mostStyles} styles`);
      return true;
    },
    close: name => {
      if (name === 'cellXfs') isOfCells = false;
      return true;
    },
  });
  return formats;
}
