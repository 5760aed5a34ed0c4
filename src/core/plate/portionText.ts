import { roundHalfUp } from '#core/quantity/rounding.ts';
import { measureName } from './measureName.ts';
import type { Portion } from './plate.ts';

/** A portion as it reads in a sentence: "2 slices", "1/3 cup", "56 g", "1 serving". */
export function portionText(portion: Portion): string {
  if ('grams' in portion) return `${roundHalfUp(portion.grams, 1)} g`;
  if ('milliliters' in portion) return `${roundHalfUp(portion.milliliters, 1)} mL`;
  if ('servings' in portion) return counted(portion.servings, 'serving');
  return counted(portion.count, measureName(portion.measure));
}

function counted(count: number, noun: string): string {
  return `${countText(count)} ${count > 1 && !noun.endsWith('s') ? plural(noun) : noun}`;
}

function plural(noun: string): string {
  if (/[^aeiou]y$/.test(noun)) return `${noun.slice(0, -1)}ies`;
  return /(s|x|ch|sh)$/.test(noun) ? `${noun}es` : `${noun}s`;
}

const kitchenFractions: readonly (readonly [value: number, text: string])[] = [
  [1 / 8, '1/8'],
  [1 / 4, '1/4'],
  [1 / 3, '1/3'],
  [1 / 2, '1/2'],
  [2 / 3, '2/3'],
  [3 / 4, '3/4'],
];

/** A count as a kitchen writes it: 0.25 is "1/4", 1.5 is "1 1/2"; other fractions to two decimals. */
export function countText(count: number): string {
  const whole = Math.floor(count + 1e-9);
  const rest = count - whole;
  if (rest < 1e-6) return String(whole);
  const fraction = kitchenFractions.find(([value]) => Math.abs(value - rest) < 1e-6);
  if (fraction === undefined) return String(roundHalfUp(count, 2));
  return whole === 0 ? fraction[1] : `${whole} ${fraction[1]}`;
}
