import type { ChartNote } from '#core/client/note/chartNote.ts';
import type { DailyCopies } from './archive/dailyCopies.ts';
import type { WaitingArchives } from './archive/waitingArchives.ts';
import type { Archives, RestoreMark } from './archives.ts';
import type { ClientVault } from './clientVault.ts';
import type { Demo } from './loadDemo.ts';
import type { Minerals } from './minerals.ts';
import type { PdfPrinter, ReadDatasets, ReadTable, SiteFiles } from './ports.ts';
import type { Shelf } from './shelf.ts';
import type { Store } from './store.ts';

/** What the use cases of the workbench work with; the main file joins it to the world. */
export interface Workbench {
  readonly store: Store;
  readonly shelf: Shelf;
  readonly minerals: Minerals;
  readonly vault: ClientVault;
  readonly archives: Archives;
  readonly waiting: WaitingArchives;
  readonly copies: DailyCopies;
  readonly restoreMark: RestoreMark;
  readonly noteDocument: (note: ChartNote) => Promise<Uint8Array>;
  readonly now: () => Date;
  /** An identity that nothing else has. */
  readonly newId: () => string;
  readonly demo: () => Demo;
  readonly readTable: ReadTable;
  /** `wanted` ends the work when it is aborted: nobody waits for the PDF any more. @throws Fault browser-not-found */
  readonly pdfPrinter: (wanted: AbortSignal) => PdfPrinter;
  /** A ZIP file; the same files give the same bytes. */
  readonly zip: (files: SiteFiles) => Uint8Array;
  /** @throws Fault reference-not-recognized, reference-not-valid */
  readonly readDatasets: ReadDatasets;
}
