/** What the use cases ask of the world, as plain values and functions. Adapters fulfil it; the main files join the two. */
import type { Issue, Reading } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import type { Watch } from './watch.ts';

/** A table as it stands in a file: every cell is text, nothing is converted. */
export interface Table {
  readonly headings: readonly string[];
  /** Rows that hold anything at all, in the order of the file. */
  readonly rows: readonly TableRow[];
  readonly issues: readonly Issue<TableIssueCode>[];
}

export interface TableRow {
  /** As a spreadsheet counts: a heading in the first row is row 1. */
  readonly row: number;
  readonly cells: readonly string[];
}

export type TableIssueCode =
  | 'encoding-not-utf8'
  | 'encoding-damaged'
  | 'quote-not-closed'
  | 'quote-not-doubled'
  | 'more-than-one-sheet'
  | 'cell-merged'
  | 'cell-with-formula'
  | 'rows-hidden'
  | 'cell-far-right'
  | 'more-issues';

/**
 * Reads the bytes of a CSV file or an XLSX workbook within limits of memory, time and cells, beside whatever else the program does.
 *
 * @throws Fault table-without-headings, table-too-large, file-took-too-long, workbook-encrypted, workbook-of-another-kind,
 *   workbook-not-readable; work-cancelled.
 */
export type ReadTable = (bytes: Uint8Array, watch?: Watch) => Promise<Table>;

/** One line of a stream: its text, or why it has none. */
export type InputLine = { readonly line: number; readonly text: string } | { readonly line: number; readonly issue: Issue<LineIssueCode> };

export type LineIssueCode = 'line-too-long' | 'line-not-utf8';

/** The files of a site by their path with slashes, below the site's folder. */
export type SiteFiles = ReadonlyMap<string, string | Uint8Array>;

/**
 * Prints one self-contained HTML page to a tagged PDF.
 *
 * @throws Fault browser-not-found, pdf-not-made, work-cancelled.
 */
export type PdfPrinter = (html: string) => Promise<Uint8Array>;

/** A file of a published dataset, wherever it lies: too large to be held at once. */
export interface DatasetFile {
  /** Without its folder. */
  readonly name: string;
  readonly bytes: number;
  readonly open: () => AsyncIterable<Uint8Array>;
}

export type DatasetIssueCode =
  | 'row-without-number'
  | 'row-too-short'
  | 'row-too-long'
  | 'food-twice'
  | 'figure-not-readable'
  | 'figure-impossible'
  | 'figure-twice'
  | 'unit-not-known'
  | 'quote-not-closed'
  | 'more-issues';

/**
 * The composition tables that some files hold; a bad row is left out and named by file and line.
 *
 * @throws Fault reference-not-recognized, reference-not-valid, work-cancelled.
 */
export type ReadDatasets = (
  files: readonly DatasetFile[],
  folder: string,
  watch: Watch,
) => Promise<Reading<readonly LargerTable[], DatasetIssueCode>>;
