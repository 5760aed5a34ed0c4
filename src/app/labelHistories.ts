import type { ReadLabel } from '#core/label/label.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { ImportedLabel } from './importLabels.ts';

/** The foods of a category by their newest label that was read by `today`. A label that does not tell its day counts as the oldest. */
export function newestFoods(labels: readonly ImportedLabel[], category: string, today: Day): readonly PlateFood[] {
  const wanted = category.trim().toLowerCase();
  const read = labels.filter(
    ({ label: { printed } }) => printed.category?.trim().toLowerCase() === wanted && (printed.readOn ?? '') <= today,
  );
  return labelHistories(read).map(({ id, history }) => foodOf(id, history.at(-1)!));
}

/** The labels of one food. */
export interface History {
  readonly id: string;
  /** By the day they were read; on one day in the order of the table. */
  readonly history: readonly ReadLabel[];
}

/** Labels with the same GTIN, or without one the same name and maker, are of one food; it goes by the id of the first. */
export function labelHistories(labels: readonly ImportedLabel[]): readonly History[] {
  const byFood = Map.groupBy(labels, ({ row, label: { printed } }) => {
    if (printed.gtin !== undefined) return `gtin ${printed.gtin}`;
    const named = [printed.name, printed.maker ?? ''].map(one => one?.trim().toLowerCase());
    return printed.name === undefined ? `row ${row}` : JSON.stringify(named);
  });
  return [...byFood.values()].map(all => {
    const history = [...all].sort((a, b) => compareDays(a.label.printed.readOn, b.label.printed.readOn));
    return { id: history[0]!.label.printed.id ?? `row-${history[0]!.row}`, history: history.map(({ label }) => label) };
  });
}

function compareDays(a = '', b = ''): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

export function foodOf(id: string, label: ReadLabel): PlateFood {
  return { id, name: label.printed.name ?? id, label };
}
