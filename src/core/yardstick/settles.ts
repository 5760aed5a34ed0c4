import { isSameJson } from '#core/json/isSameJson.ts';
import type { Plate, PlateFood, PlatePart } from '#core/plate/plate.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { floorTo } from '#core/quantity/rounding.ts';
import { boundOf, isBoundTest } from './boundTest.ts';
import { kinTitle } from './ingredientKin.ts';
import { judgePlate } from './judgePlate.ts';
import { comparedRange, helpingOf } from './served.ts';
import { type Found, type Test, type VerdictWord, verdictWords, type Yardstick } from './yardstick.ts';

/** What is missing for a verdict. */
export type Missing =
  /** A figure that no label tells; `upTo` is the most at which the test still fits: per amount of that label, or on the plate for all of them together. */
  | { readonly kind: 'figure'; readonly nutrient: Nutrient; readonly of: readonly string[]; readonly upTo?: number }
  /** Words of a statement that may hide what must not be in it. */
  | { readonly kind: 'words'; readonly words: string; readonly without: string }
  | { readonly kind: 'statement'; readonly of: string }
  | { readonly kind: 'name'; readonly word: string }
  /** What the portion weighs. */
  | { readonly kind: 'portion'; readonly of: string };

/** What would settle a verdict that cannot be told, and what it would be then. */
export interface Settling {
  readonly missing: readonly Missing[];
  readonly verdict: VerdictWord;
}

/**
 * What would settle a food that cannot be told, at the usual portion on its plate. 30 % of 2,000 mg potassium are 600 mg; a bread beside it brings 90 mg, a portion is
 * two servings: (600 − 90) / 2, up to 255 mg on the label would fit. Undefined where everything is told.
 */
export function whatSettles(food: PlateFood, plate: Plate, yardstick: Yardstick): Settling | undefined {
  const { tests: outcomes } = judgePlate({ food, plate, yardstick });
  const tests = new Map(yardstick.tests.map(test => [test.id, test]));
  const open = outcomes.filter(({ verdict }) => verdict === "can't tell");
  const missing = open.flatMap(({ testId, found }) => missingFor(tests.get(testId), found, food, plate));
  if (missing.length === 0) return undefined;
  const others = outcomes.filter(({ verdict }) => verdict !== "can't tell").map(({ verdict }) => verdictWords.indexOf(verdict));
  const once = missing.filter((one, at) => missing.findIndex(other => isSameJson(one, other)) === at);
  return { missing: once, verdict: verdictWords[Math.max(0, ...others)]! };
}

function missingFor(test: Test | undefined, found: Found | undefined, food: PlateFood, plate: Plate): readonly Missing[] {
  if (test === undefined) return [];
  if (found !== undefined) return missingWords(test, found);
  if (!isBoundTest(test) || test.measure.kind !== 'nutrient') return [];
  return missingFigure(test.measure.nutrient, boundOf(test), test.useEstimates ?? false, [
    { food, portion: plate.portion },
    ...plate.companions,
  ]);
}

function missingWords({ measure }: Test, { food, how, words }: Found): readonly Missing[] {
  if (how === 'unread') return [{ kind: 'statement', of: food }];
  if (measure.kind === 'ingredient') {
    const without = kinTitle(measure.kin);
    return how === 'word-not-known' ? [{ kind: 'name', word: without }] : [{ kind: 'words', words, without }];
  }
  return measure.kind === 'additive' ? [{ kind: 'words', words, without: `${measure.class} additive` }] : [];
}

/** The known parts at their high end; the room that is left goes to the one that is not known. */
function missingFigure(
  nutrient: Nutrient,
  { kind, figure }: ReturnType<typeof boundOf>,
  useEstimates: boolean,
  parts: readonly PlatePart[],
): readonly Missing[] {
  const told = parts.map(part => ({ ...helpingOf(part), range: comparedRange(part.food.label.amounts[nutrient], useEstimates) }));
  const unweighed = told.find(({ factor }) => typeof factor !== 'number');
  if (unweighed !== undefined) return [{ kind: 'portion', of: unweighed.part.food.name }];
  const unknown = told.filter(({ range }) => range === undefined || !Number.isFinite(range.hi));
  const of = unknown.map(({ part }) => part.food.name);
  const [only] = unknown;
  if (only === undefined) return [];
  if (typeof only.factor !== 'number' || kind === 'atLeast') return [{ kind: 'figure', nutrient, of }];
  const known = told.reduce(
    (sum, { factor, range }) =>
      sum + (range !== undefined && Number.isFinite(range.hi) && typeof factor === 'number' ? factor * range.hi : 0),
    0,
  );
  const room = (figure - known) / (unknown.length > 1 ? 1 : only.factor);
  const whole = floorTo(room, 0);
  const upTo = Math.max(0, kind === 'below' && whole >= room ? whole - 1 : whole);
  return [{ kind: 'figure', nutrient, of, upTo }];
}

/** "Potassium of up to 310 mg on the label would settle it: fits." */
export function settlingText({ missing, verdict }: Settling, food: string): string {
  const parts = missing.map(one => missingText(one, food)).join(', and ');
  return `${parts.charAt(0).toUpperCase()}${parts.slice(1)} would settle it: ${verdict}.`;
}

function missingText(one: Missing, food: string): string {
  const owner = (name: string): string => (name === food ? '' : ` of ${name}`);
  switch (one.kind) {
    case 'figure': {
      const { name, unit } = nutrients[one.nutrient];
      const figure = one.upTo === undefined ? '' : ` of up to ${one.upTo.toLocaleString('en-US')} ${unit}`;
      if (one.of.length > 1) return `${name}${figure === '' ? '' : `${figure} together`} in ${one.of.join(' and ')}`;
      return `${name}${figure} on the label${owner(one.of[0]!)}`;
    }
    case 'words':
      return `the maker’s word that there is no ${one.without} in it (${one.words})`;
    case 'statement':
      return `the ingredient statement${owner(one.of)}`;
    case 'name':
      return `“${one.word}” written as an ingredient is on a label`;
    case 'portion':
      return `what a serving${owner(one.of)} weighs`;
  }
}
