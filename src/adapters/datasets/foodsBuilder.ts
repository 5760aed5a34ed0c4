import type { DescribedFood } from '#core/reference/largerTable.ts';
import { nothingKnown } from '#core/reference/largerTable.ts';
import type { ReferenceNutrient } from '#core/reference/referenceFood.ts';

/** Measures of a food that are kept; the first ones of a dataset are the usual ones. */
const mostMeasures = 3;

type Figures = Record<ReferenceNutrient, number | null>;

interface Begun {
  readonly number: string;
  readonly description: string;
  readonly group: string | null;
  readonly per100G: Figures;
  readonly household: { text: string; grams: number }[];
}

/** Foods of a dataset as its files tell of them: names first, then figures and measures line by line. */
export class FoodsBuilder {
  private readonly byKey = new Map<string, Begun>();

  /** False when the key has a food already. */
  begin(key: string, number: string, description: string, group: string | null): boolean {
    if (this.byKey.has(key)) return false;
    this.byKey.set(key, { number, description, group, per100G: { ...nothingKnown }, household: [] });
    return true;
  }

  has(key: string): boolean {
    return this.byKey.has(key);
  }

  /** The figure so far; null is unknown. */
  figure(key: string, nutrient: ReferenceNutrient): number | null {
    return this.byKey.get(key)?.per100G[nutrient] ?? null;
  }

  set(key: string, nutrient: ReferenceNutrient, value: number): void {
    const food = this.byKey.get(key);
    if (food !== undefined) food.per100G[nutrient] = value;
  }

  measure(key: string, text: string, grams: number | null): void {
    const food = this.byKey.get(key);
    if (food === undefined || grams === null || grams <= 0 || food.household.length >= mostMeasures) return;
    food.household.push({ text: text.trim(), grams });
  }

  foods(): readonly DescribedFood[] {
    return [...this.byKey.values()];
  }
}
