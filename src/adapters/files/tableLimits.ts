import type { TableIssueCode, TableRow } from '#app/ports.ts';
import { Fault, type Issue } from '#core/errors.ts';

/** How much of a table is held at once (own decision: a shelf of 50,000 labels with every column of docs/formats.md is a third of it). */
export interface TableLimits {
  readonly rows: number;
  /** Cells of all rows, empty ones left of a filled one among them, since they take room too. */
  readonly cells: number;
  readonly characters: number;
  /** Of a CSV file, empty ones among them. */
  readonly lines: number;
}
export const heldTable: TableLimits = { rows: 100_000, cells: 5_000_000, characters: 100_000_000, lines: 1_048_576 };
/** For a table that is let go row by row. */
export const streamedTable: TableLimits = {
  rows: Number.POSITIVE_INFINITY,
  cells: Number.POSITIVE_INFINITY,
  characters: Number.POSITIVE_INFINITY,
  lines: Number.POSITIVE_INFINITY,
};

/** Cells further right are left alone and told: no label has as many columns, and one stray cell in the last must not cost a row of 16,384. */
export const mostColumns = 1_000;

/** Told one by one up to here, then counted. */
const mostIssues = 1_000;

/** Hands rows on and counts what they take. @throws Fault table-too-large */
export class CountedRows {
  private readonly take: (row: TableRow) => void;
  private readonly limits: TableLimits;
  private rows = 0;
  private cells = 0;
  private characters = 0;

  constructor(take: (row: TableRow) => void, limits: TableLimits) {
    this.take = take;
    this.limits = limits;
  }

  add(row: TableRow): void {
    this.rows += 1;
    this.cells += row.cells.length;
    for (const cell of row.cells) this.characters += cell.length;
    for (const what of ['rows', 'cells', 'characters'] as const) {
      if (this[what] > this.limits[what]) throw tooMany(this.limits, what);
    }
    this.take(row);
  }
}

export function tooMany(limits: TableLimits, what: keyof TableLimits): Fault {
  return new Fault('table-too-large', `The table has more than ${limits[what].toLocaleString('en-US')} ${what}.`);
}

/** What is noticed in a table: of thousands of one kind, the first are told and the rest counted. */
export class TableIssues {
  private readonly told: Issue<TableIssueCode>[] = [];
  private more = 0;

  add(issue: Issue<TableIssueCode>): void {
    if (this.told.length < mostIssues) this.told.push(issue);
    else this.more += 1;
  }

  all(): readonly Issue<TableIssueCode>[] {
    if (this.more === 0) return this.told;
    const found = `${this.more.toLocaleString('en-US')} more of these`;
    return [...this.told, { code: 'more-issues', place: {}, found, expected: `at most ${mostIssues.toLocaleString('en-US')} to be told` }];
  }
}

export function farRight(row: number, column: number): Issue<TableIssueCode> {
  return {
    code: 'cell-far-right',
    place: { row },
    found: `a cell in column ${column.toLocaleString('en-US')}`,
    expected: `at most ${mostColumns.toLocaleString('en-US')} columns; what stands further right is left alone`,
  };
}
