import type { ReactNode } from 'react';

/** A column of a table. */
export interface Column<Row> {
  readonly key: string;
  readonly name: string;
  /** What stands in the row; on paper too, unless `onPaper` says otherwise. */
  readonly cell: (row: Row) => ReactNode;
  readonly onPaper?: (row: Row) => ReactNode;
  readonly nameOnPaper?: string;
  /** Figures stand at the right. */
  readonly isNumber?: boolean;
  /** How wide, as CSS writes it: "7rem", "minmax(0, 3fr)". */
  readonly width?: string;
  /** What the column is sorted by; a column without it is not sorted. What is not known stands at the end either way. */
  readonly sortBy?: (row: Row) => string | number | null;
  /** Its name is for who does not see: a column of buttons. */
  readonly isNameUnseen?: boolean;
  readonly isOnPaper?: boolean;
}

export interface Sort {
  readonly key: string;
  readonly isDown: boolean;
}

/**
 * Rows sorted by a column; rows that are alike keep their order. Without a column of that name nothing is sorted.
 * @example sortedRows([{ n: 2 }, { n: null }, { n: 1 }], [{ key: 'n', sortBy: row => row.n, … }], { key: 'n', isDown: true }) // 2, 1, null
 */
export function sortedRows<Row>(rows: readonly Row[], columns: readonly Column<Row>[], sort: Sort | undefined): readonly Row[] {
  const by = columns.find(({ key }) => key === sort?.key)?.sortBy;
  if (by === undefined || sort === undefined) return rows;
  const known = rows.filter(row => by(row) !== null);
  const unknown = rows.filter(row => by(row) === null);
  const order = sort.isDown ? -1 : 1;
  return [...known.sort((a, b) => order * compare(by(a)!, by(b)!)), ...unknown];
}

function compare(a: string | number, b: string | number): number {
  return typeof a === 'number' && typeof b === 'number' ? a - b : words.compare(String(a), String(b));
}

const words = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Rows in which every word that was typed is found. */
export function rowsWith<Row>(rows: readonly Row[], wordsOf: (row: Row) => string, typed: string): readonly Row[] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return wanted.length === 0 ? rows : rows.filter(row => wanted.every(word => wordsOf(row).toLowerCase().includes(word)));
}
