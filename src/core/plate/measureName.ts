import { measureIn } from '#core/label/serving/householdMeasure.ts';
import { labelGramsPerOunce, labelMillilitersPerMeasure } from '#core/quantity/convert.ts';

/** The name of a household measure as labels are read: "Tbsp." is "tablespoon", "slices" is "slice". */
export function measureName(words: string): string {
  const lower = words.trim().toLowerCase();
  return measureIn(lower) ?? lower;
}

export function sameMeasure(a: string, b: string): boolean {
  return a === b || measureName(a) === measureName(b);
}

const milliliters: ReadonlyMap<string, number> = new Map([
  ['teaspoon', labelMillilitersPerMeasure.teaspoon],
  ['tablespoon', labelMillilitersPerMeasure.tablespoon],
  ['cup', labelMillilitersPerMeasure.cup],
  ['fluid ounce', labelMillilitersPerMeasure['fluid-ounce']],
]);

/** Millilitres of a volume measure as labels use it (21 CFR 101.9(b)(5)(viii)): a cup is 240 mL; undefined for a slice. */
export function millilitersOfMeasure(measure: string): number | undefined {
  return milliliters.get(measureName(measure));
}

/** Grams of a mass measure as labels use it: an ounce is 28 g (21 CFR 101.9(b)(5)(viii)); undefined for anything else. */
export function gramsOfMeasure(measure: string): number | undefined {
  return measureName(measure) === 'ounce' ? labelGramsPerOunce : undefined;
}
