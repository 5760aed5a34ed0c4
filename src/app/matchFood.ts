import { readGtin } from '#core/label/audit/gtin.ts';
import { foodNameKey } from '#core/label/foodNameKey.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { FoodRow, NewFood } from './store.ts';

/** Finds the food that a label belongs to: by its number, else by maker and name, letter case and blanks aside. */
export function foodFinder(foods: readonly FoodRow[]): (printed: PrintedLabel) => FoodRow | undefined {
  const byGtin = new Map(foods.flatMap(food => (food.gtin === undefined ? [] : [[food.gtin, food] as const])));
  const byName = new Map(foods.map(food => [foodNameKey(food.maker, food.name), food]));
  return printed => {
    const gtin = gtin14(printed);
    return (gtin === undefined ? undefined : byGtin.get(gtin)) ?? byName.get(foodNameKey(printed.maker, printed.name ?? ''));
  };
}

/** What a label says of its food. A number whose check digit is wrong is kept on the label and identifies nothing. */
export function foodOf(printed: PrintedLabel): NewFood {
  const gtin = gtin14(printed);
  return {
    name: printed.name ?? 'unnamed food',
    ...(printed.maker === undefined ? {} : { maker: printed.maker }),
    ...(printed.category === undefined ? {} : { category: printed.category }),
    ...(gtin === undefined ? {} : { gtin }),
  };
}

function gtin14({ gtin }: PrintedLabel): string | undefined {
  if (gtin === undefined) return undefined;
  const reading = readGtin(gtin);
  // Numbers with a price or weight inside name no product.
  return reading.kind === 'gtin' && !reading.variableWeight ? reading.gtin14 : undefined;
}
