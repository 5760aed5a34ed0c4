import type { Plate, PlateFood, Portion } from './plate.ts';
import { portionFactor, portionMilliliters } from './portionFactor.ts';

/** How much of what is eaten counts as fluid. `not-known` says that it counts, or may, and that the label does not tell how much. */
export type Fluid = { readonly kind: 'none' } | { readonly kind: 'fluid'; readonly milliliters: number } | { readonly kind: 'not-known' };

/** Reference amounts of what is drunk, and of soup (21 CFR 101.12(b); keys of data/reference-amounts.json). */
const drunk: ReadonlySet<string> = new Set(['soup', 'milk', 'juice', 'vegetable-juice', 'soft-drink']);
/** In milliliters by the law, and neither drunk nor soup. */
const notDrunk: ReadonlySet<string> = new Set([
  'minor-main-entree-sauce',
  'dip-or-salsa',
  'major-condiment',
  'minor-condiment',
  'hot-cereal',
  'mixed-dish',
  'nut-butter',
  'salt',
]);

/** What a name or a category calls a liquid at its end ("reduced fat milk", "soups and broths") or, in Spanish, at its beginning. */
const endsAsLiquid =
  /\b(?:soups?|broths?|stocks?|bouillons?|drinks?|beverages?|juices?|milks?|water|teas?|coffees?|sodas?|colas?|lemonade|nectars?|smoothies?|shakes?|kefir|beers?|wines?|ice|gelatin|gelatin desserts?|ice pops?|popsicles?|ice creams?|sherbets?|sorbets?)$/;
const beginsAsLiquid =
  /^(?:sopas?|caldos?|consom[eé]s?|bebidas?|jugos?|zumos?|leche|agua|t[eé]|caf[eé]|refrescos?|n[eé]ctar|hielo|gelatinas?|helados?|paletas? de hielo)(?!\p{L})/u;
/** Made up with water, or not drunk at all: how much fluid it comes to, the label does not tell. */
const madeUp =
  /\b(?:dry|mix|mixes|powder|powdered|condensed|concentrate|concentrated|cubes?|instant|bags?|polvo|cubitos?|concentrado|condensada)\b/;
const notALiquid = /\b(?:oils?|aceites?|vinegars?|vinagres?|dressings?|sauces?|salsas?|syrups?|jarabes?|extracts?|creamers?)\b/;

/**
 * What a portion of a food comes to as fluid: anything liquid at room temperature, soup, ice and gelatin (kidney facts 3.6). That it is one
 * is told by its reference amount, a serving in milliliters, its category or the end of its name; a soup counts whole, solids too. 1 cup of soup is 240 mL.
 */
export function fluidOf(food: PlateFood, portion: Portion, category?: string): Fluid {
  const { printed, amountsFor } = food.label;
  const { referenceAmount } = printed;
  const words = [category ?? printed.category ?? '', food.name, printed.name ?? ''].map(text => text.toLowerCase());
  if (typeof referenceAmount === 'string' && notDrunk.has(referenceAmount)) return { kind: 'none' };
  // "Milk with chocolate syrup" is called by what stands before the syrup.
  const isDrunk = typeof referenceAmount === 'string' && drunk.has(referenceAmount);
  if (!isDrunk && words.some(text => notALiquid.test(calledBy(text)))) return { kind: 'none' };
  const isLiquid = isDrunk || amountsFor.milliliters !== undefined || words.some(isCalledLiquid);
  if (!isLiquid) return { kind: 'none' };
  const isMadeUp = printed.state !== 'as-prepared' && [...words, ...printed.front].some(text => madeUp.test(text.toLowerCase()));
  if (isMadeUp) return { kind: 'not-known' };
  const milliliters = portionMilliliters(portion, food);
  return milliliters === undefined || typeof portionFactor(portion, food) !== 'number'
    ? { kind: 'not-known' }
    : { kind: 'fluid', milliliters };
}

/** What the whole plate comes to as fluid: half a cup of milk on a cereal is 120 mL. One part that is not known makes the sum not known. */
export function fluidOnPlate({ portion, companions }: Plate, food: PlateFood, category?: string): Fluid {
  const parts = [fluidOf(food, portion, category), ...companions.map(one => fluidOf(one.food, one.portion))];
  if (parts.some(({ kind }) => kind === 'not-known')) return { kind: 'not-known' };
  const milliliters = parts.reduce((sum, part) => sum + (part.kind === 'fluid' ? part.milliliters : 0), 0);
  return milliliters > 0 ? { kind: 'fluid', milliliters } : { kind: 'none' };
}

/** "Tomato soup, lower sodium" is called by what stands before the comma, "tuna in water" by what is in the water. */
function isCalledLiquid(text: string): boolean {
  const called = calledBy(text);
  return endsAsLiquid.test(called) || beginsAsLiquid.test(called);
}

function calledBy(text: string): string {
  return text.split(/,|\(|\b(?:in|with|en|con)\b/)[0]!.trim();
}
