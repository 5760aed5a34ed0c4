import type { ClientVault } from '#app/clientVault.ts';
import type { Demo } from '#app/loadDemo.ts';
import type { Minerals } from '#app/minerals.ts';
import type { PdfPrinter, ReadDatasets, SiteFiles, Table } from '#app/ports.ts';
import type { Shelf } from '#app/shelf.ts';
import type { PlateFile, Store, Versioned } from '#app/store.ts';
import type { ChartNote } from '#core/client/note/chartNote.ts';
import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';

/** What the routes work with. */
export interface World {
  readonly store: Store;
  readonly shelf: Shelf;
  readonly minerals: Minerals;
  readonly vault: ClientVault;
  readonly noteDocument: (note: ChartNote) => Promise<Uint8Array>;
  readonly now: () => Date;
  /** "SQLite", "PostgreSQL". */
  readonly database: string;
  readonly demo: () => Demo;
  /** CSV or XLSX. @throws Fault table-without-headings, file-not-readable */
  readonly readTable: (bytes: Uint8Array) => Promise<Table>;
  /** @throws Fault browser-not-found */
  readonly pdfPrinter: () => PdfPrinter;
  /** A ZIP file; the same files give the same bytes. */
  readonly zip: (files: SiteFiles) => Uint8Array;
  /** @throws Fault reference-not-recognized, reference-not-valid */
  readonly readDatasets: ReadDatasets;
  readonly log: (line: string) => void;
}

/** A plate by id or as JSON. @throws Fault plate-not-found, plate-not-valid */
export async function plateOf(given: string | Readonly<Record<string, unknown>>, store: Store): Promise<Plate> {
  if (typeof given !== 'string') return readPlate(given);
  const builtIn = builtInPlates.find(({ id }) => id === given);
  if (builtIn !== undefined) return builtIn;
  const kept = await store.plates.get(given);
  if (kept === undefined) throw new Fault('plate-not-found', 'There is no plate of this name any more.');
  return readPlate(kept.value);
}

export function readPlate(json: unknown): Plate {
  const { value, issues } = plateFromJson(json);
  if (value === undefined)
    throw new Fault(
      'plate-not-valid',
      issues.map(({ place, found, expected }) => `${place.heading ?? 'the plate'}: found ${found}, expected ${expected}`).join('; '),
    );
  return value;
}

/** Every plate there is: the built-in ones and the kept ones that can be read. */
export async function allPlates(store: Store): Promise<readonly Plate[]> {
  const kept = (await store.plates.list()).map(({ value }) => plateFromJson(value).value);
  return [...builtInPlates, ...kept.filter(plate => plate !== undefined)];
}

export async function keptPlates(store: Store): Promise<readonly Versioned<PlateFile>[]> {
  return store.plates.list();
}

/** A yardstick by id or as JSON. @throws Fault yardstick-not-found, yardstick-not-valid */
export async function yardstickOf(given: string | Readonly<Record<string, unknown>>, store: Store): Promise<Yardstick> {
  if (typeof given !== 'string') return readYardstick(given);
  const builtIn = builtInYardsticks.find(({ id }) => id === given);
  if (builtIn !== undefined) return builtIn;
  const kept = await store.yardsticks.get(given);
  if (kept === undefined) throw new Fault('yardstick-not-found', 'There is no yardstick of this name any more.');
  return readYardstick(kept.value);
}

export function readYardstick(json: unknown): Yardstick {
  const { value, issues } = yardstickFromJson(json);
  if (value === undefined)
    throw new Fault(
      'yardstick-not-valid',
      issues.map(({ place, found, expected }) => `${place.heading ?? 'the yardstick'}: found ${found}, expected ${expected}`).join('; '),
    );
  return value;
}
