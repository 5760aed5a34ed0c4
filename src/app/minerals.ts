import type { PrintedLabel } from '#core/label/label.ts';
import { mineralModelVersion } from '#core/recipe/estimateMinerals.ts';
import type { MineralEstimate, NoEstimate } from '#core/recipe/minerals.ts';
import { referenceTable } from '#core/reference/referenceFood.ts';
import type { LabelRow, Store } from './store.ts';

export type Estimated = MineralEstimate | NoEstimate;

/** Port of what estimates: a solver on a thread of its own. */
export interface MineralEstimator {
  readonly estimate: (labels: readonly PrintedLabel[]) => Promise<readonly Estimated[]>;
  readonly close: () => Promise<void>;
}

/** What an estimate rests on besides the label: kept estimates of another version are made anew. */
export const estimateVersion = `${mineralModelVersion} ${referenceTable.edition} ${referenceTable.foods.length}`;

/** Labels estimated together: few enough that one asked for on a screen does not wait long. */
const atOnce = 10;

/**
 * The minerals that labels do not print. An estimate is made once a label and version and kept in the store; a category
 * that somebody looks at is estimated in the background, one batch after the other.
 */
export class Minerals {
  private readonly store: Store;
  private readonly estimator: MineralEstimator;
  private readonly log: (line: string) => void;
  private known: Promise<Map<string, Estimated>> | undefined;
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
  all(): Promise<ReadonlyMap<string, Estimated>> {
    this.known ??= this.store
      .estimates(estimateVersion)
      .then(rows => new Map(rows.map(({ labelId, estimate }) => [labelId, estimate as Estimated])));
    return this.known;
  }

  /** The estimate of one label, made now when it is missing. */
  async of(label: LabelRow): Promise<Estimated> {
    const kept = (await this.all()).get(label.id);
    if (kept !== undefined) return kept;
    await this.work([label]);
    return (await this.all()).get(label.id)!;
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
    this.known = undefined;
    this.queue.clear();
    this.learned += 1;
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

  private async work(labels: readonly LabelRow[]): Promise<void> {
    const estimates = await this.estimator.estimate(labels.map(({ printed }) => printed));
    const rows = labels.map(({ id }, at) => ({ labelId: id, estimate: estimates[at]! }));
    await this.store.putEstimates(estimateVersion, rows);
    const known = await this.known;
    for (const { labelId, estimate } of rows) known?.set(labelId, estimate);
    this.learned += 1;
  }
}
