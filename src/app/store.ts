import type { PrintedLabel } from '#core/label/label.ts';
import type { LargerDataset, LargerTable } from '#core/reference/largerTable.ts';
import type { Documents, Guides, HandoutFile, PlateFile, Surveys, YardstickFile } from './documents.ts';
import type { PhotoType } from './photoType.ts';
import type { Watch } from './watch.ts';

/**
 * What the use cases ask of a database. Every method that writes resolves only when the write will survive a power cut.
 * Two engines fulfil it, SQLite and PostgreSQL, and one contract suite holds both to it.
 *
 * What a package said is never changed or deleted: a label is added, corrected by a further label that says so, or
 * withdrawn by a row of its own. Only purging the demo or the whole workspace deletes.
 */
export interface Store {
  /** Foods with what stands of their labels, by maker and name. `category` matches without regard to case. */
  listFoods(filter?: { readonly category?: string; readonly search?: string }): Promise<readonly FoodRow[]>;
  getFood(id: string): Promise<FoodRow | undefined>;
  /** All labels of a food, newest first, corrected and withdrawn ones among them. */
  labelsOf(foodId: string): Promise<readonly LabelRow[]>;
  /** The label that stands for each food: the newest that is neither corrected nor withdrawn. For surveys. */
  standingLabels(category?: string): Promise<readonly StandingLabel[]>;
  /** The one of a food; undefined when none stands. */
  standingLabelOf(foodId: string): Promise<StandingLabel | undefined>;
  /**
   * Those of the next `most` foods behind an id, by their ids, so that a long shelf is read in steps; begins with ''. `lastId` is where to go
   * on, undefined behind the last food.
   */
  standingLabelsAfter(afterId: string, most: number): Promise<{ readonly rows: readonly StandingLabel[]; readonly lastId?: string }>;

  /** Adds a food with its first label. */
  addFood(food: NewFood, label: NewLabel): Promise<{ readonly food: FoodRow; readonly label: LabelRow }>;
  /**
   * Adds a label to a food; refuses when somebody else has changed the food since `seenVersion` was read
   * (`changed-meanwhile`), so that nothing is overwritten.
   */
  addLabel(foodId: string, seenVersion: number, label: NewLabel): Promise<{ readonly food: FoodRow; readonly label: LabelRow }>;
  /** Withdraws a label by a row that says why. */
  withdrawLabel(labelId: string, seenVersion: number, reason: string): Promise<FoodRow>;
  /** Name, maker, category, density, measures: what is ours to say, not what the package says. */
  changeFood(foodId: string, seenVersion: number, change: Partial<NewFood>): Promise<FoodRow>;
  /** Sets the day in the place of the one that was seen, null for none; refuses when another stands there by now (`changed-meanwhile`). */
  setRecheck(labelId: string, seenDueOn: string | null, dueOn: string | null): Promise<void>;

  /** Adds many foods and labels in one transaction: all of them or, when it fails or is cancelled, none. Gives the import's id for undoing. */
  applyImport(entry: ImportEntry, watch?: Watch): Promise<{ readonly importId: string; readonly added: number; readonly joined: number }>;
  /** Withdraws every label the import added, by rows that say so. */
  undoImport(importId: string): Promise<{ readonly withdrawn: number }>;
  listImports(): Promise<readonly ImportRow[]>;

  readonly plates: Documents<PlateFile>;
  /** They have no mark of the demo. */
  readonly yardsticks: Documents<YardstickFile>;
  readonly guides: Guides;
  /** Handouts on a topic; those of clients stand in the clients' own file. */
  readonly handouts: Documents<HandoutFile>;
  readonly surveys: Surveys;

  addPhoto(labelId: string, photo: NewPhoto): Promise<PhotoRow>;
  getPhoto(id: string): Promise<(PhotoRow & { readonly bytes: Uint8Array }) | undefined>;

  /** Kept estimates of one version; those of another are as good as missing. */
  estimates(version: string): Promise<readonly KeptEstimate[]>;
  /** Keeps computed estimates. The revision stays: nothing that a person said has changed. */
  putEstimates(version: string, estimates: readonly KeptEstimate[]): Promise<void>;

  /** The imported composition tables without their foods, by dataset. */
  listReferences(): Promise<readonly ReferenceRow[]>;
  /** The imported composition tables, in the order in which they are asked. */
  referenceTables(): Promise<readonly LargerTable[]>;
  /** Keeps imported tables in one transaction; an earlier edition of a dataset gives way. */
  putReferences(tables: readonly LargerTable[]): Promise<void>;
  /** Refuses a dataset that is not there (`reference-not-found`). */
  removeReference(dataset: string): Promise<void>;

  /** Every row that an archive keeps, from one moment, whatever is written meanwhile. Computed rows are not among them. */
  archived<Result>(work: (tables: readonly ArchivedTable[]) => Promise<Result>): Promise<Result>;
  /**
   * Puts archived rows (read again from the first when the database was lost on the way) into the workspace in one transaction: all that are to be put, or none. `empty` takes the
   * place of the demo and refuses when anything else is there (`workspace-not-empty`); `beside` adds what is new and leaves what stands as it is.
   * @throws Fault archive-not-valid when a row is none of ours, or rows do not belong together; work-cancelled
   */
  restoreRows(rows: () => AsyncIterable<ArchivedRow>, into: RestoreInto, watch?: Watch): Promise<RestoredRows>;
  /** Runs work that writes through another connection, while the writes of this one wait. */
  exclusively<Result>(work: () => Promise<Result>): Promise<Result>;
  /** Deletes the demo's foods, labels, plates, guides and handouts, in one transaction. */
  purgeDemo(): Promise<void>;
  /** Deletes everything, in one transaction. */
  purgeAll(): Promise<void>;
  counts(): Promise<Readonly<Record<CountName, number>>>;
  /** Each category, in one of its spellings, with the number of its foods that have a label which stands; the largest first. */
  categories(): Promise<readonly { readonly name: string; readonly foods: number }[]>;
  /** What was damaged behind the program's back: left out wherever rows are listed, and kept as it is. */
  damagedRows(): Promise<readonly DamagedRow[]>;
  /** Grows with every acknowledged write: what was computed from the shelf is fresh while it stands. */
  revision(): Promise<number>;
  /** When something was last written, ISO 8601, UTC: what tells an older copy of the data folder. Undefined before the first such write. */
  writtenAt(): Promise<string | undefined>;
  /**
   * Runs `work`, which brings the first contents, when the workspace was never written to, and lets no other program do the same. What
   * an earlier run left that was killed meanwhile is purged before.
   */
  onceWhenNew(work: () => Promise<void>): Promise<void>;
  close(): Promise<void>;
}

export const countNames = ['foods', 'labels', 'demoFoods', 'plates', 'photos'] as const;
export type CountName = (typeof countNames)[number];

/** A value of a row that cannot be read: `id` tells the row within its table. */
export interface DamagedRow {
  readonly table: string;
  readonly id: string;
  readonly column: string;
}

export interface NewFood {
  readonly name: string;
  readonly maker?: string;
  readonly category?: string;
  /** 14 digits, left-padded. */
  readonly gtin?: string;
  readonly densityGPerMl?: number;
  readonly gramsPerMeasure?: Readonly<Record<string, number>>;
  readonly isDemo?: boolean;
}

export interface FoodRow extends NewFood {
  readonly id: string;
  readonly isDemo: boolean;
  /** Grows with each change; sent back with the next one, so that two tabs cannot overwrite each other. */
  readonly version: number;
}

/** `correction` mends a misread figure of the label it names; `read` is a reading of a package, the first or a later one. */
export type LabelKind = 'read' | 'correction';

export interface StandingLabel {
  readonly food: FoodRow;
  readonly label: LabelRow;
}

export interface NewLabel {
  readonly kind: LabelKind;
  readonly printed: PrintedLabel;
  readonly correctsLabelId?: string;
  /** Why it was corrected, in the person's words. */
  readonly reason?: string;
  /** Calendar day by which the package must be read again, yyyy-mm-dd. */
  readonly recheckOn?: string;
}

export interface LabelRow extends NewLabel {
  readonly id: string;
  readonly foodId: string;
  /** ISO 8601, UTC. */
  readonly addedAt: string;
  readonly correctedBy?: string;
  readonly withdrawn?: { readonly reason: string; readonly at: string };
  readonly photoIds: readonly string[];
}

export interface ImportEntry {
  readonly fileName: string;
  readonly isDemo?: boolean;
  /** A label joins the food it names, or begins a new one. */
  readonly labels: readonly (
    | { readonly joins: string; readonly label: NewLabel }
    | { readonly begins: NewFood; readonly label: NewLabel }
  )[];
}

export interface ImportRow {
  readonly id: string;
  readonly fileName: string;
  readonly at: string;
  readonly added: number;
  readonly joined: number;
  readonly undoneAt?: string;
}

/** An imported composition table in short. */
export interface ReferenceRow {
  readonly dataset: LargerDataset;
  readonly source: string;
  readonly edition: string;
  readonly foods: number;
  /** ISO 8601, UTC. */
  readonly importedAt: string;
  /** Another one for another content. */
  readonly digest: string;
}

/** An estimate of a label's minerals, as JSON of whoever made it. */
export interface KeptEstimate {
  readonly labelId: string;
  readonly estimate: unknown;
}

export interface NewPhoto {
  readonly mime: PhotoType;
  readonly bytes: Uint8Array;
}

export interface PhotoRow {
  readonly id: string;
  readonly labelId: string;
  readonly mime: NewPhoto['mime'];
  readonly sha256: string;
}

/** A row as an archive keeps it: its columns as the database has them, bytes among them. */
export interface ArchivedRow {
  readonly table: string;
  readonly row: Readonly<Record<string, unknown>>;
}

export interface ArchivedTable {
  readonly name: string;
  readonly count: number;
  /** In an order in which they can be put back, a few at a time. */
  readonly rows: () => AsyncIterable<Readonly<Record<string, unknown>>>;
}

export type RestoreInto = 'empty' | 'beside';

/** `differs`: it stands here and is another. `bar-code-taken`, `name-taken`: another food here has it, so that the next import would take the two for one. `older-reading`: a newer reading of its food stands here. `part-left-out`: what it belongs to was left out. */
export const leftOutReasons = ['differs', 'bar-code-taken', 'name-taken', 'older-reading', 'part-left-out', 'demo'] as const;
export type LeftOutReason = (typeof leftOutReasons)[number];

/** What became of the rows of an archive. */
export interface RestoredRows {
  /** By table. */
  readonly added: Readonly<Record<string, number>>;
  /** Rows that stood here already. */
  readonly same: number;
  /** Rows that were not put, by reason. */
  readonly leftOut: Readonly<Partial<Record<LeftOutReason, number>>>;
  /** The first of them, by table and key, with the name where they have one. */
  readonly examples: readonly { readonly table: string; readonly id: string; readonly reason: LeftOutReason; readonly name?: string }[];
}
