import type { PrintedLabel } from '#core/label/label.ts';
import { estimateFromJson } from '#core/recipe/estimateJson.ts';
import { mineralModelVersion } from '#core/recipe/estimateMinerals.ts';
import type { MineralEstimate, NoEstimate } from '#core/recipe/minerals.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import { referenceTable } from '#core/reference/referenceFood.ts';
import type { LabelRow, ReferenceRow, Store } from './store.ts';

export type Estimated = MineralEstimate | NoEstimate;

/** Port of what estimates: a solver on a thread of its own. */
export interface MineralEstimator {
  readonly estimate: (labels: readonly PrintedLabel[]) => Promise<readonly Estimated[]>;
  /** The imported tables that later estimates ask for what our own table does not know. */
  readonly takeReferences: (tables: readonly LargerTable[]) => void;
  readonly close: () => Promise<void>;
}

/** What an estimate rests on besides the label: kept estimates of another version are made anew. */
function estimateVersion(references: readonly ReferenceRow[]): string {
  const larger = references.map(({ dataset, digest }) => ` + ${dataset} ${digest}`).join('');
  return `${mineralModelVersion} ${referenceTable.edition} ${referenceTable.foods.length}${larger}`;
}

/** Kept estimates of the tables that stand now. */
interface Loaded {
  readonly version: string;
  readonly known: Promise<Map<string, Estimated>>;
}

/** Labels estimated together: few enough that one asked for on a screen does not wait long. */
const atOnce = 10;

/**
 * The minerals that labels do not print. An estimate is made once a label and version and kept in the store; a category
 * that somebody looks at is estimated in the background, one batch after the other. Imported composition tables are looked
 * after with each question, so that estimates of earlier ones are never shown, whoever has changed them.
 */
export class Minerals {
  private readonly store: Store;
  private readonly estimator: MineralEstimator;
  private readonly log: (line: string) => void;
  private loaded: Loaded | undefined;
  private readonly queue = new Map<string, LabelRow>();
  private isWorking = false;
  private learned = 0;

  constructor(store: Store, estimator: MineralEstimator, log: (line: string) => void) {
    this.store = store;
    this.estimator = estimator;
    this.log = log;
  }

  /** Grows with every estimate: what was computed with the earlier ones is stale. */
  get stamp(): number {
    return this.learned;
  }

  /** Estimates by label; those that are not made yet are missing. */
  async all(): Promise<ReadonlyMap<string, Estimated>> {
    return (await this.standing()).known;
  }

  /** The estimate of one label, made now when it is missing. */
  async of(label: LabelRow): Promise<Estimated> {
    for (let attempt = 1; ; attempt++) {
      const kept = (await this.all()).get(label.id);
      if (kept !== undefined) return kept;
      const [made] = await this.work([label]);
      // Another table may have been imported while it was made: then it is made once more.
      if (attempt === 2) return made!;
    }
  }

  /** Has the missing ones of these labels made in the background; tells how many are there. */
  async want(labels: readonly LabelRow[]): Promise<{ readonly done: number; readonly of: number }> {
    const known = await this.all();
    const missing = labels.filter(({ id }) => !known.has(id));
    for (const label of missing) this.queue.set(label.id, label);
    if (!this.isWorking && this.queue.size > 0) void this.workOff();
    return { done: labels.length - missing.length, of: labels.length };
  }

  /** After a purge: what belonged to the labels is gone with them. */
  forget(): void {
    this.loaded = undefined;
    this.queue.clear();
    this.learned += 1;
  }

  /** The kept estimates of the tables that stand now, and their version; the estimator is given the tables first. */
  private async standing(): Promise<{ readonly version: string; readonly known: Map<string, Estimated> }> {
    const version = estimateVersion(await this.store.listReferences());
    if (this.loaded?.version !== version) {
      if (this.loaded !== undefined) {
        this.queue.clear();
        this.learned += 1;
      }
      this.loaded = { version, known: this.load(version) };
    }
    const loaded = this.loaded;
    try {
      return { version, known: await loaded.known };
    } catch (error) {
      if (this.loaded === loaded) this.loaded = undefined;
      throw error;
    }
  }

  private async load(version: string): Promise<Map<string, Estimated>> {
    this.estimator.takeReferences(await this.store.referenceTables());
    const rows = await this.store.estimates(version);
    // What cannot be read is as good as missing: it is estimated anew when somebody looks.
    return new Map(
      rows.flatMap(({ labelId, estimate }): [string, Estimated][] => {
        const read = estimateFromJson(estimate);
        return read === undefined ? [] : [[labelId, read]];
      }),
    );
  }

  private async workOff(): Promise<void> {
    this.isWorking = true;
    try {
      while (this.queue.size > 0) {
        const batch = [...this.queue.values()].slice(0, atOnce);
        for (const { id } of batch) this.queue.delete(id);
        await this.work(batch);
      }
    } catch (error) {
      // The rest is asked for again by whoever looks; the log says where it broke.
      this.queue.clear();
      this.log(`estimating minerals stopped: ${error instanceof Error ? error.name : typeof error}\n`);
    } finally {
      this.isWorking = false;
    }
  }

  private async work(labels: readonly LabelRow[]): Promise<readonly Estimated[]> {
    const { version, known } = await this.standing();
    const estimates = await this.estimator.estimate(labels.map(({ printed }) => printed));
    const rows = labels.map(({ id }, at) => ({ labelId: id, estimate: estimates[at]! }));
    await this.store.putEstimates(version, rows);
    for (const { labelId, estimate } of rows) known.set(labelId, estimate);
    this.learned += 1;
    return estimates;
  }
}
