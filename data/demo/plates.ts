import type { PrintedLabel } from '#core/label/label.ts';
import type { Portion } from '#core/plate/plate.ts';
import { printedLabel } from './labels.ts';
import { type Category, companionFoods } from './recipes.ts';

interface FoodJson {
  readonly id: string;
  readonly name: string;
  readonly label: PrintedLabel;
}

interface CompanionJson {
  readonly food: FoodJson;
  readonly portion: Portion;
  readonly withoutSalt?: FoodJson;
}

/** A plate as docs/formats.md has it in JSON. */
export interface PlateJson {
  readonly id: string;
  readonly title: string;
  readonly portion: Portion;
  readonly companions: readonly CompanionJson[];
  readonly categories: readonly string[];
}

const twoSlices: Portion = { measure: 'slice', count: 2 };
const oneCup: Portion = { measure: 'cup', count: 1 };

/** How the three categories are eaten. The surveyed food is always one serving. */
export const demoPlates: readonly PlateJson[] = [
  plate('sandwich slices', 'slices-on-low-sodium-bread', 'two slices of low-sodium bread', {
    food: food('low-sodium-bread'),
    portion: twoSlices,
  }),
  plate('sandwich slices', 'slices-on-white-bread', 'two slices of white bread', {
    food: food('white-bread'),
    portion: twoSlices,
    withoutSalt: food('low-sodium-bread'),
  }),
  plate('cold cereals', 'cereal-with-milk', 'half a cup of reduced fat milk', {
    food: food('reduced-fat-milk'),
    portion: { measure: 'cup', count: 0.5 },
  }),
  plate('soups and broths', 'soup-with-rice', 'a cup of rice cooked without salt', { food: food('rice-without-salt'), portion: oneCup }),
  plate('soups and broths', 'soup-with-salted-rice', 'a cup of rice cooked with salt', {
    food: food('rice-with-salt'),
    portion: oneCup,
    withoutSalt: food('rice-without-salt'),
  }),
  plate('soups and broths', 'soup-with-crackers', 'six unsalted crackers', {
    food: food('unsalted-crackers'),
    portion: { measure: 'cracker', count: 6 },
  }),
];

function plate(category: Category, id: string, title: string, companion: CompanionJson): PlateJson {
  return { id, title, portion: { servings: 1 }, companions: [companion], categories: [category] };
}

function food(id: string): FoodJson {
  const companion = companionFoods.find(one => one.id === id);
  if (companion === undefined) throw new RangeError(`no companion ${id}`);
  return { id, name: companion.name, label: printedLabel(companion) };
}
