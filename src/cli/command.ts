import type { ParseArgsOptionsConfig } from 'node:util';
import type { ClientVault } from '#app/clientVault.ts';
import type { InputLine, PdfPrinter, ReadDatasets, SiteFiles, Table } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import type { LinearSolver } from '#core/optimize/linearModel.ts';

/** What a command may do to the world. main.ts fulfils it. */
export interface World {
  /** Results. Waits until the reader has taken them. */
  write(text: string): Promise<void>;
  /** Progress, reports and hints, on standard error. */
  say(text: string): void;
  /** Columns that a table may take. */
  readonly width: number;
  /** Standard input, in blocks of as many lines as arrive together. */
  inputLines(): AsyncIterable<readonly InputLine[]>;
  /** @throws Fault file-not-found, file-not-readable, file-too-large. */
  readBytes(path: string): Promise<Uint8Array>;
  /** @throws Fault table-without-headings. */
  readTable(bytes: Uint8Array): Table;
  /** The solver of linear models; loading it takes a tenth of a second. */
  openSolver(): Promise<LinearSolver>;
  /** The day on the clock, yyyy-mm-dd, where the person is. */
  today(): string;
  /** @throws Fault folder-not-owned, output-not-written. */
  writeSite(folder: string, files: SiteFiles): Promise<void>;
  /** @throws Fault browser-not-found. */
  pdfPrinter(): Promise<PdfPrinter>;
  /** The composition tables in a folder or a file. @throws Fault file-not-found, reference-not-recognized, reference-not-valid. */
  readDatasets(path: string, watch: Watch): ReturnType<ReadDatasets>;
  /** Writes a file whole or not at all. @throws Fault output-not-written. */
  writeFile(path: string, text: string): Promise<void>;
  /** The client records of the data folder. @throws Fault database-locked, clients-file-damaged and the other faults of the database. */
  openClientVault(): Promise<ClientVault>;
  /** Moves a file of client records that does not open aside, and gives its new name. @throws Fault clients-file-whole, database-locked. */
  moveClientsAside(): Promise<string>;
  /** An answer typed at the terminal, or the next line of standard input. */
  ask(question: string): Promise<string>;
  /** The same, not shown while it is typed. */
  askHidden(question: string): Promise<string>;
  /** Where a file that ships with the program is. */
  shipped(path: string): string;
}

export interface Arguments {
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
}

export interface Command {
  readonly name: string;
  /** The line that help shows: the command with its arguments and options. */
  readonly usage: string;
  readonly summary: string;
  readonly options: ParseArgsOptionsConfig;
  run(given: Arguments, world: World): Promise<void>;
}

/** The commands by name, each loaded when it is asked for: half of a short run is loading code. */
export type CommandTable = Readonly<Record<string, () => Promise<{ readonly command: Command }>>>;
