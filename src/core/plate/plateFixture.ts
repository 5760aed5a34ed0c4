import type { Amounts, PrintedLabel, ReadLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { PlateFood } from './plate.ts';

/** Invented foods for tests, read from a printed label as any food is. */
export function foodWith(name: string, printed: Partial<PrintedLabel>, more: Partial<Omit<PlateFood, 'label'>> = {}): PlateFood {
  const label = readLabel({
    name,
    market: 'us',
    serving: {},
    basis: 'per-serving',
    state: 'as-packaged',
    front: [],
    panel: {},
    otherColumns: [],
    ...printed,
  });
  return { id: name.toLowerCase().replaceAll(' ', '-'), name, label, ...more };
}

/** The same food with some amounts set by hand: ranges, estimates and unknowns that no panel prints. */
export function withAmounts(food: PlateFood, amounts: Partial<Amounts>): PlateFood {
  const label: ReadLabel = { ...food.label, amounts: { ...food.label.amounts, ...amounts } };
  return { ...food, label };
}
