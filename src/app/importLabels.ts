import type { Issue, Reading } from '#core/errors.ts';
import type { ReadLabel } from '#core/label/label.ts';
import { type LabelField, labelFields } from '#core/label/labelFields.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { isDamaged } from './damagedText.ts';
import { type Column, matchHeadings } from './matchHeadings.ts';
import type { Table, TableRow } from './ports.ts';

export interface ImportedLabel {
  /** The row of the table, as a spreadsheet shows it. */
  readonly row: number;
  readonly label: ReadLabel;
}

export type ImportIssueCode =
  | 'column-not-known'
  | 'row-without-name'
  | 'row-too-long'
  | 'row-too-short'
  | 'row-not-a-label'
  | 'formula-in-number-column'
  | 'text-damaged';

/**
 * The labels of a table, one a row, with a report of everything that was noticed. Cells are handed on as they stand and
 * nothing is guessed. Left out and named are rows without a name and rows with more cells than there are headings, since
 * their figures may stand under the wrong heading.
 *
 * @throws Fault table-without-headings, table-heading-twice, table-heading-missing.
 */
export function importLabels(table: Table): Reading<readonly ImportedLabel[]> {
  const { issues, read } = labelReader(table);
  return { value: table.rows.map(read).filter(label => label !== undefined), issues };
}

/** The same row by row, for tables so long that somebody waits: `issues` grows with what each row is noticed for. */
export function labelReader(table: Table): {
  readonly issues: readonly Issue[];
  readonly read: (row: TableRow) => ImportedLabel | undefined;
  /** What was noticed since the last time; for a table whose report is not held. */
  readonly takeIssues: () => readonly Issue[];
} {
  const headings = table.headings.slice(0, table.headings.findLastIndex(heading => heading.trim() !== '') + 1);
  const { columns, unknown } = matchHeadings(headings);
  const issues: Issue[] = [...table.issues];
  for (const heading of unknown) {
    issues.push({
      code: 'column-not-known',
      place: { heading },
      found: heading,
      expected: 'a heading of docs/formats.md; the column is left alone',
    });
  }
  const read = (row: TableRow): ImportedLabel | undefined => {
    const label = readRow(row, headings.length, columns, issues);
    return label && { row: row.row, label };
  };
  return { issues, read, takeIssues: () => issues.splice(0) };
}

type Report = (code: ImportIssueCode, found: string, expected: string, heading?: string) => void;

function readRow({ row, cells }: TableRow, width: number, columns: readonly Column[], issues: Issue[]): ReadLabel | undefined {
  const told = new Set<string>();
  const report: Report = (code, found, expected, heading) => {
    issues.push({ code, place: { row, ...(heading === undefined ? {} : { heading }) }, found, expected });
    told.add(`${code} ${heading}`);
  };
  if (cells.slice(width).some(cell => cell.trim() !== '')) {
    const expected = `${width} cells; the row is left out, since its figures may stand under the wrong headings`;
    report('row-too-long', `${cells.length} cells`, expected);
    return undefined;
  }
  if (cells.length < width) report('row-too-short', `${cells.length} cells`, `${width} cells; the missing ones are taken as not printed`);

  const json = labelJson(cells, columns, report);
  if (json.name === undefined) {
    report('row-without-name', 'no name', 'a name; the row is left out');
    return undefined;
  }
  const { value, issues: formIssues } = labelFromJson(json);
  const label = value && readLabel(value);
  for (const issue of [...formIssues, ...(label?.issues ?? [])]) {
    // What is noticed in a statement has a position in it and no key.
    const key = issue.place.heading ?? (issue.place.start === undefined ? undefined : 'statement');
    const heading = columns.find(column => jsonPlace(column) === key)?.heading;
    if (told.has(`formula-in-number-column ${heading}`) || told.has(`${issue.code} ${heading}`)) continue;
    issues.push({ ...issue, place: { ...issue.place, row, ...(heading === undefined ? {} : { heading }) } });
  }
  if (label === undefined) report('row-not-a-label', shown(String(json.name)), 'a label; the row is left out');
  return label;
}

/** Label JSON from the cells of a row. An empty cell is not printed; nothing else is read into a cell here. */
function labelJson(cells: readonly string[], columns: readonly Column[], report: Report): RowJson {
  const json: RowJson = { serving: {}, panel: {} };
  for (const { at, heading, means } of columns) {
    const cell = (cells[at] ?? '').trim();
    if (cell === '') continue;
    if (means.kind === 'panel') json.panel[means.key] = cell;
    else place(json, means.key, cell);
    if (isDamaged(cell)) report('text-damaged', shown(cell), 'text without broken characters', heading);
    if (cell.startsWith('=') && (means.kind === 'panel' || labelFields[means.key].kind === 'figure')) {
      report('formula-in-number-column', shown(cell), 'the number itself; a formula is kept as text and not calculated', heading);
    }
  }
  return json;
}

type RowJson = { serving: Record<string, string>; panel: Record<string, string> } & Record<string, unknown>;

const trimmed = (claim: string) => claim.trim();

function place(json: RowJson, key: LabelField, cell: string): void {
  const { kind, place: at } = labelFields[key];
  const [part, inner] = at.split('.');
  if (inner !== undefined) json.serving[inner] = cell;
  else if (kind === 'list') json[part!] = cell.split('|').map(trimmed).filter(Boolean);
  // "Per Serving" is `per-serving`.
  else if (kind === 'words') json[part!] = cell.toLowerCase().replace(/[\s_]+/g, '-');
  else json[part!] = cell;
}

/** Where in label JSON a column's cell goes: "panel.sodiumMg", "serving.grams", "name". */
function jsonPlace({ means }: Column): string {
  return means.kind === 'panel' ? `panel.${means.key}` : labelFields[means.key].place;
}

function shown(cell: string): string {
  return cell.length > 60 ? `${cell.slice(0, 59)}…` : cell;
}

/** The foods of imported labels. A label without an id goes by its row. */
export function foodsOf(labels: readonly ImportedLabel[]): readonly PlateFood[] {
  return labels.map(({ row, label }) => ({ id: label.printed.id ?? `row-${row}`, name: label.printed.name ?? `row ${row}`, label }));
}
