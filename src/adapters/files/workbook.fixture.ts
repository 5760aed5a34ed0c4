import { strToU8, type Zippable, zipSync } from 'fflate';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const documents = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packages = 'http://schemas.openxmlformats.org/package/2006/relationships';

export interface WorkbookParts {
  /** Each sheet: its name, what stands in `<worksheet>`, and whether it is shown. */
  readonly sheets: readonly { readonly name: string; readonly xml: string; readonly state?: 'hidden' | 'veryHidden' }[];
  /** What stands in `<sst>` and in `<styleSheet>`. */
  readonly texts?: string;
  readonly styles?: string;
  /** Attributes of `<workbookPr>`. */
  readonly properties?: string;
  /** Parts beside these, or in their place; undefined takes one away. */
  readonly parts?: Readonly<Record<string, string | Uint8Array | undefined>>;
}

/** The parts of a workbook as ECMA-376 part 1, annex L.2.1 has the smallest one, written by hand. */
export function workbookXml({ sheets, texts, styles, properties = '', parts = {} }: WorkbookParts): Record<string, string | Uint8Array> {
  const related = [
    ...sheets.map((_, at) => ['worksheet', `worksheets/sheet${at + 1}.xml`]),
    ...(texts === undefined ? [] : [['sharedStrings', 'sharedStrings.xml']]),
    ...(styles === undefined ? [] : [['styles', 'styles.xml']]),
  ];
  const made = {
    '[Content_Types].xml': '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    '_rels/.rels': `<Relationships xmlns="${packages}"><Relationship Id="rId1" Type="${documents}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${documents}"><workbookPr ${properties}/><sheets>${sheets
      .map(
        ({ name, state }, at) =>
          `<sheet name="${name}" sheetId="${at + 1}" ${state === undefined ? '' : `state="${state}" `}r:id="rId${at + 1}"/>`,
      )
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${packages}">${related
      .map(([kind, target], at) => `<Relationship Id="rId${at + 1}" Type="${documents}/${kind}" Target="${target}"/>`)
      .join('')}</Relationships>`,
    ...(texts === undefined ? {} : { 'xl/sharedStrings.xml': `<sst xmlns="${main}">${texts}</sst>` }),
    ...(styles === undefined ? {} : { 'xl/styles.xml': `<styleSheet xmlns="${main}">${styles}</styleSheet>` }),
    ...Object.fromEntries(
      sheets.map(({ xml }, at) => [`xl/worksheets/sheet${at + 1}.xml`, `<worksheet xmlns="${main}">${xml}</worksheet>`]),
    ),
    ...parts,
  };
  return Object.fromEntries(Object.entries(made).flatMap(([name, content]) => (content === undefined ? [] : [[name, content]])));
}

export function workbookFile(given: WorkbookParts): Uint8Array<ArrayBuffer> {
  return zipped(workbookXml(given));
}

export function zipped(parts: Readonly<Record<string, string | Uint8Array>>, level: 0 | 6 = 6): Uint8Array<ArrayBuffer> {
  const files: Zippable = Object.fromEntries(
    Object.entries(parts).map(([name, content]) => [name, typeof content === 'string' ? strToU8(content) : content]),
  );
  return new Uint8Array(zipSync(files, { level, mtime: new Date(1980, 0, 1) }));
}

/** Rows of a sheet with texts in the cells (`t="inlineStr"`); null is no cell, and what begins with "<" is the XML of one. */
export function sheetData(rows: readonly (readonly (string | null)[])[]): string {
  const cell = (text: string | null): string => (text === null ? '<c/>' : text.startsWith('<') ? text : inline(text));
  return `<sheetData>${rows.map(cells => `<row>${cells.map(cell).join('')}</row>`).join('')}</sheetData>`;
}

export function inline(text: string): string {
  return `<c t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;
}
