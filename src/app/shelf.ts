import type { ReadLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { estimatedLabel } from '#core/recipe/estimatedLabel.ts';
import type { Minerals } from './minerals.ts';
import type { FoodRow, LabelRow, Store } from './store.ts';

export interface ShelfFood {
  readonly row: FoodRow;
  readonly label: LabelRow;
  readonly food: PlateFood;
}

const labelsAtOnce = 100;

/** Made once, not anew for each of thousands of comparisons. */
const alphabet = new Intl.Collator('en');

function byName({ row: a }: ShelfFood, { row: b }: ShelfFood): number {
  return alphabet.compare(a.name, b.name) || alphabet.compare(a.maker ?? '', b.maker ?? '');
}

/**
 * The foods of the workspace by name and maker with their standing labels, read. A label is read once: what a package said never changes,
 * so its reading is kept by its id. The list is made anew when the store's revision has moved.
 */
export class Shelf {
  private readonly store: Store;
  private readonly minerals: Minerals | undefined;
  private readonly readings = new Map<string, ReadLabel>();
  private revision = -1;
  private stamp = -1;
  private all: readonly ShelfFood[] = [];
  private making: Promise<void> | undefined;

  /** With `minerals`, what a label does not print is filled with its estimate where there is one. */
  constructor(store: Store, minerals?: Minerals) {
    this.store = store;
    this.minerals = minerals;
  }

  async foods(category?: string): Promise<readonly ShelfFood[]> {
    const revision = await this.store.revision();
    const stamp = this.minerals?.stamp ?? 0;
    // Who comes while the list is made waits for it; it may be of before what this one has to see.
    while (this.revision < revision || this.stamp < stamp) {
      this.making ??= this.make().finally(() => {
        this.making = undefined;
      });
      await this.making;
    }
    if (category === undefined) return this.all;
    const wanted = category.trim().toLowerCase();
    return this.all.filter(({ row }) => row.category?.toLowerCase() === wanted);
  }

  private async make(): Promise<void> {
    const revision = await this.store.revision();
    const stamp = this.minerals?.stamp ?? 0;
    const rows = await this.store.standingLabels();
    const estimates = await this.minerals?.all();
    const all: ShelfFood[] = [];
    for (const [index, { food, label }] of rows.entries()) {
      // Reading thousands of labels takes seconds, in which others have their turn.
      if (index % labelsAtOnce === labelsAtOnce - 1) await new Promise(turn => setTimeout(turn));
      all.push({ row: food, label, food: plateFood(food, estimatedLabel(this.reading(label), estimates?.get(label.id))) });
    }
    this.all = all.sort(byName);
    this.revision = revision;
    this.stamp = stamp;
    this.forgetAllBut(new Set(rows.map(({ label }) => label.id)));
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
