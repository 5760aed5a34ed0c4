import { Fault, type Issue, type Place } from '#core/errors.ts';
import type { Table, TableRow } from '../ports.ts';
import { type Column, columnOf, type LabColumn } from './labColumns.ts';

/** One result as it is written; what is not written is empty. */
export interface LabCell {
  readonly place: Place;
  readonly name: string;
  readonly code: string;
  readonly value: string;
  readonly unit: string;
  readonly day: string;
  readonly time: string;
  readonly range: string;
  readonly lower: string;
  readonly upper: string;
  readonly drawn: string;
  readonly hemolyzed: string;
  readonly remark: string;
  readonly status: string;
  readonly specimen: string;
}

export interface LabCells {
  readonly cells: readonly LabCell[];
  /** Each once. */
  readonly people: readonly WrittenPerson[];
  readonly issues: readonly Issue<'column-not-known'>[];
}

/** Whose results they are, as the table writes it. */
export interface WrittenPerson {
  readonly name?: string;
  readonly born?: string;
}

interface Placed {
  readonly at: number;
  readonly heading: string;
  readonly column: Column;
}

/** Titles above a table are shorter. */
const deepestHeadings = 30;

/** Every result of a table, however it is laid out. @throws Fault table-heading-missing, table-heading-twice */
export function labCells(table: Table): LabCells {
  const { columns, rows, titles } = withUnitsBelow(headed(table));
  const means = meaningsOf(columns);
  const cells = ofSections(rows, columns, means);
  const people = peopleOf(rows, columns);
  return { cells, people: people.length === 0 ? personAbove(titles) : people, issues: unknownOf(columns) };
}

interface Headed {
  readonly columns: readonly Placed[];
  readonly rows: readonly TableRow[];
  readonly titles: readonly string[];
}

/** The row that holds the headings: the first one, or the first below titles under which results can be read. */
function headed(table: Table): Headed {
  const all = [{ row: 1, cells: table.headings }, ...table.rows];
  for (const [at, { cells }] of all.slice(0, deepestHeadings).entries()) {
    const columns = placed(cells);
    if (missingOf(columns) === undefined)
      return { columns, rows: all.slice(at + 1), titles: all.slice(0, at).map(({ cells: title }) => title.join(' ').trim()) };
  }
  throw new Fault('table-heading-missing', missingOf(placed(table.headings)) ?? '');
}

/** Under headings that name analytes a row of their units may stand: it is part of the headings. */
function withUnitsBelow(headings: Headed): Headed {
  const { columns, rows } = headings;
  const [first, ...below] = rows;
  const units = columns.flatMap(({ at, column }) =>
    column.kind === 'analyte' && column.unit === '' ? [{ at, unit: (first?.cells[at] ?? '').trim() }] : [],
  );
  const isDated = columns.some(({ at, column }) => column.kind === 'meaning' && (first?.cells[at] ?? '').trim() !== '');
  const areUnits =
    !isDated && units.some(({ unit }) => unit !== '') && units.every(({ unit }) => unit === '' || /^[a-zµμ%][^\s]*$/iu.test(unit));
  if (!areUnits) return headings;
  const unitAt = new Map(units.map(({ at, unit }) => [at, unit]));
  return {
    ...headings,
    rows: below,
    columns: columns.map(one => {
      const unit = unitAt.get(one.at);
      return one.column.kind === 'analyte' && unit !== undefined ? { ...one, column: { ...one.column, unit } } : one;
    }),
  };
}

function placed(headings: readonly string[]): readonly Placed[] {
  return headings.flatMap((heading, at) => (heading.trim() === '' ? [] : [{ at, heading, column: columnOf(heading) }]));
}

/** What a table needs that it has not; undefined where it can be read. */
function missingOf(columns: readonly Placed[]): string | undefined {
  const has = (...wanted: readonly LabColumn[]): boolean =>
    columns.some(({ column }) => column.kind === 'meaning' && wanted.includes(column.means));
  const isNamed = has('analyte', 'loinc');
  const isDated = has('date', 'reported', 'drawn');
  if (columns.some(({ column }) => column.kind === 'day')) return isNamed ? undefined : 'There is no column "analyte" or "loinc".';
  if (columns.some(({ column }) => column.kind === 'analyte') && !has('value')) return isDated ? undefined : 'There is no column "date".';
  if (!has('value')) return 'There is no column "value".';
  if (!isDated) return 'There is no column "date".';
  if (!isNamed) return 'There is no column "analyte" or "loinc".';
  return undefined;
}

type Meanings = ReadonlyMap<LabColumn, Placed>;

function meaningsOf(columns: readonly Placed[]): Meanings {
  const means = new Map<LabColumn, Placed>();
  for (const one of columns) {
    if (one.column.kind !== 'meaning') continue;
    const { means: what } = one.column;
    const first = means.get(what);
    if (first === undefined) means.set(what, one);
    else if (!manyOf.includes(what))
      throw new Fault('table-heading-twice', `Columns "${first.heading}" and "${one.heading}" are both ${what}.`);
  }
  return means;
}

/** Of these the first counts, or all of them are looked at. */
const manyOf: readonly LabColumn[] = ['other', 'person', 'born', 'remark', 'reported', 'specimen'];

/** A line that names a group of results ("URINE CHEMISTRY") says what those below it were made of, where no column does. */
function ofSections(rows: readonly TableRow[], columns: readonly Placed[], means: Meanings): readonly LabCell[] {
  let section = '';
  return rows.flatMap(row => {
    const cells = cellsOfRow(row, columns, means).map(cell => (cell.specimen === '' ? { ...cell, specimen: section } : cell));
    const [words = '', ...others] = row.cells.map(one => one.trim()).filter(one => one !== '');
    if (cells.length === 0 && words !== '' && others.length === 0) section = words;
    return cells;
  });
}

function cellsOfRow({ row, cells }: TableRow, columns: readonly Placed[], means: Meanings): readonly LabCell[] {
  const text = (at: number | undefined): string => (at === undefined ? '' : (cells[at] ?? '').trim());
  const cell = (what: LabColumn): string => text(means.get(what)?.at);
  const ofRow = {
    ...{ name: cell('analyte'), code: cell('loinc'), value: cell('value'), unit: cell('unit') },
    ...{ day: dayOf(cell), time: cell('time'), range: cell('range'), lower: cell('lowerNormal'), upper: cell('upperNormal') },
    ...{ drawn: isDay(cell('drawn')) ? '' : cell('drawn'), hemolyzed: cell('hemolyzed'), remark: cell('remark') },
    ...{ status: cell('status'), specimen: cell('specimen') },
  };
  const days = columns.flatMap(({ at, column }) => (column.kind === 'day' ? [{ at, day: column.words }] : []));
  const wide = (at: number, more: Partial<LabCell>): readonly LabCell[] =>
    text(at) === ''
      ? []
      : [{ place: { row, heading: columns.find(one => one.at === at)?.heading ?? '' }, ...ofRow, value: text(at), ...more }];
  if (days.length > 0) return ofRow.name === '' && ofRow.code === '' ? [] : days.flatMap(({ at, day }) => wide(at, { day }));
  const analytes = columns.flatMap(({ at, column }) => (column.kind === 'analyte' ? [{ at, name: column.name, unit: column.unit }] : []));
  if (!means.has('value')) return analytes.flatMap(({ at, name, unit }) => wide(at, { name, code: '', unit }));
  // A row that names a group of results, or says something below them, is no result.
  const isResult = ofRow.value !== '' || (ofRow.unit !== '' && ofRow.day !== '');
  return isResult || cells.filter(one => one.trim() !== '').length > 1 ? [{ place: { row }, ...ofRow }] : [];
}

/** The day of the sample; that of the report where no other is told. */
function dayOf(cell: (what: LabColumn) => string): string {
  return cell('date') || (isDay(cell('drawn')) ? cell('drawn') : '') || cell('reported');
}

function isDay(words: string): boolean {
  return /\d/u.test(words);
}

function peopleOf(rows: readonly TableRow[], columns: readonly Placed[]): LabCells['people'] {
  const of = (what: LabColumn, { cells }: TableRow): string =>
    columns
      .filter(({ column }) => column.kind === 'meaning' && column.means === what)
      .map(({ at }) => (cells[at] ?? '').trim())
      .filter(words => words !== '')
      .join(', ');
  const people = new Map<string, { name?: string; born?: string }>();
  for (const row of rows) {
    const name = of('person', row);
    const born = of('born', row);
    if (name === '' && born === '') continue;
    people.set(`${name} ${born}`.toLowerCase().replace(/\s+/gu, ' '), {
      ...(name === '' ? {} : { name }),
      ...(born === '' ? {} : { born }),
    });
  }
  return [...people.values()];
}

/** "Patient: Ines Orla  DOB: 03/02/1958" in the titles above the headings. */
function personAbove(titles: readonly string[]): readonly WrittenPerson[] {
  const text = titles.join('\n');
  const name = /\b(?:patient|client|name)(?: name)?\s*:\s*(.+?)\s*(?:\b(?:DOB|date of birth|born|MRN|sex|age)\b|$)/imu.exec(text)?.[1];
  const born = /\b(?:DOB|date of birth|born)\s*:?\s*([\w/.-]+)/iu.exec(text)?.[1];
  return name === undefined && born === undefined
    ? []
    : [{ ...(name === undefined ? {} : { name }), ...(born === undefined ? {} : { born }) }];
}

function unknownOf(columns: readonly Placed[]): LabCells['issues'] {
  return columns
    .filter(({ column }) => column.kind === 'unknown')
    .map(({ heading }) => ({
      code: 'column-not-known',
      place: { heading },
      found: heading,
      expected: 'a heading of docs/formats.md; the column is left alone',
    }));
}
