import type { ReadLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { estimatedLabel } from '#core/recipe/estimatedLabel.ts';
import type { Estimated, Minerals } from './minerals.ts';
import { sortedInSteps } from './sortedInSteps.ts';
import type { FoodRow, LabelRow, StandingLabel, Store } from './store.ts';
import { breathe, rowsAStep } from './watch.ts';

export interface ShelfFood {
  readonly row: FoodRow;
  readonly label: LabelRow;
  readonly food: PlateFood;
}

/** Foods that are read from the store at once. */
const foodsAStep = 500;

/** Made once, not anew for each of thousands of comparisons. */
const alphabet = new Intl.Collator('en');

function byName({ row: a }: ShelfFood, { row: b }: ShelfFood): number {
  return alphabet.compare(a.name, b.name) || alphabet.compare(a.maker ?? '', b.maker ?? '');
}

/**
 * The foods of the workspace by name and maker with their standing labels, read. A label is read once: what a package said never changes,
 * so its reading is kept by its id. The list is made anew when the store's revision has moved, in steps: others have their turn meanwhile.
 */
export class Shelf {
  private readonly store: Store;
  private readonly minerals: Minerals | undefined;
  private readonly readings = new Map<string, ReadLabel>();
  private revision = -1;
  private stamp = -1;
  private rows: readonly StandingLabel[] = [];
  private all: readonly ShelfFood[] = [];
  /** All who ask meanwhile wait for the same reading. */
  private underWay: Promise<void> | undefined;

  /** With `minerals`, what a label does not print is filled with its estimate where there is one. */
  constructor(store: Store, minerals?: Minerals) {
    this.store = store;
    this.minerals = minerals;
  }

  async foods(category?: string): Promise<readonly ShelfFood[]> {
    const revision = await this.store.revision();
    const stamp = this.minerals?.stamp ?? 0;
    // What was under way when we came may be of before: then it is read once more.
    while (this.revision < revision || this.stamp < stamp) {
      this.underWay ??= this.readAnew().finally(() => {
        this.underWay = undefined;
      });
      await this.underWay;
    }
    if (category === undefined) return this.all;
    const wanted = category.trim().toLowerCase();
    return this.all.filter(({ row }) => row.category?.toLowerCase() === wanted);
  }

  /** One food, without the others: undefined when it has no label that stands. */
  async food(id: string): Promise<ShelfFood | undefined> {
    const standing = await this.store.standingLabelOf(id);
    return standing && this.shown(standing, await this.minerals?.all());
  }

  private async readAnew(): Promise<void> {
    const revision = await this.store.revision();
    const stamp = this.minerals?.stamp ?? 0;
    if (revision !== this.revision) this.rows = await this.readRows();
    const estimates = await this.minerals?.all();
    const all: ShelfFood[] = [];
    for (const [at, row] of this.rows.entries()) {
      if (at % rowsAStep === 0) await breathe();
      all.push(this.shown(row, estimates));
    }
    this.all = await sortedInSteps(all, byName);
    this.forgetAllBut(new Set(this.rows.map(({ label }) => label.id)));
    this.revision = revision;
    this.stamp = stamp;
  }

  private async readRows(): Promise<readonly StandingLabel[]> {
    const rows: StandingLabel[] = [];
    for (let afterId = ''; ; ) {
      const { rows: part, lastId } = await this.store.standingLabelsAfter(afterId, foodsAStep);
      for (const row of part) rows.push(row);
      if (lastId === undefined) return rows;
      afterId = lastId;
      await breathe();
    }
  }

  private shown({ food, label }: StandingLabel, estimates: ReadonlyMap<string, Estimated> | undefined): ShelfFood {
    return { row: food, label, food: plateFood(food, estimatedLabel(this.reading(label), estimates?.get(label.id))) };
  }

  /** The label as the core reads it. */
  reading(label: LabelRow): ReadLabel {
    let reading = this.readings.get(label.id);
    if (reading === undefined) {
      reading = readLabel(label.printed);
      this.readings.set(label.id, reading);
    }
    return reading;
  }

  private forgetAllBut(standing: ReadonlySet<string>): void {
    for (const id of this.readings.keys()) if (!standing.has(id)) this.readings.delete(id);
  }
}

export function plateFood(row: FoodRow, label: ReadLabel): PlateFood {
  return {
    id: row.id,
    name: row.name,
    label,
    ...(row.densityGPerMl === undefined ? {} : { densityGPerMl: row.densityGPerMl }),
    ...(row.gramsPerMeasure === undefined ? {} : { gramsPerMeasure: row.gramsPerMeasure }),
  };
}
