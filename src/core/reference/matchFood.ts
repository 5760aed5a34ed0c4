import type { LargerReference } from './largerReference.ts';
import { changing, empty, heat, manyFoods, pieces, slight, tailStarts } from './modifiers.ts';
import { nameWords, sameWord } from './nameWords.ts';
import { noFoodWords, tellNoFood } from './noFood.ts';
import { type ReferenceFood, referenceFood, referenceTable } from './referenceFood.ts';
import { speller } from './spelling.ts';

export interface FoodMatch {
  readonly food: ReferenceFood;
  /** 1 is the food's own name. An own scale for ordering and cut-offs, not a probability: see REF-5. */
  readonly confidence: number;
  /** `head-noun`: words that may matter were left out. `spelling`: a word was mended.
   * `larger`: an imported table has it, and our own has nothing or only a weak guess. */
  readonly how: 'exact' | 'alias' | 'head-noun' | 'spelling' | 'larger';
  /** Kin in the table that the name may mean as well, at most five. */
  readonly alternatives: readonly ReferenceFood[];
}

/**
 * The food of the composition table that an ingredient's name means, or undefined: additives, flavors, colors, cultures
 * and enzymes never match, and no word that makes another food (dried, powder, juice, oil, skim ...) is left out for a match.
 *
 * `heading` is the name of what the ingredient is a part of: soybean under "vegetable oil" is its oil.
 * `matchFood('Organic Dehydrated Onions')` gives dried onions as an alias; 'onion oil' gives undefined. Rules REF-1 to
 * REF-8 in docs/rules/reference.md.
 *
 * `larger` are imported tables, asked only where our own has no match or a weak one (REF-13).
 */
export function matchFood(name: string, heading = '', larger?: LargerReference): FoodMatch | undefined {
  const words = nameWords(name);
  const own = matchOwn(words, heading);
  if (larger === undefined || (own !== undefined && own.confidence >= weakBelow)) return own;
  const asked = [...words, ...kindsUnder(words, heading)];
  const found = tellNoFood(asked) ? undefined : larger.find(asked);
  if (found === undefined || (own !== undefined && own.confidence >= found.confidence)) return own;
  return { ...found, how: 'larger', alternatives: own === undefined ? [] : [own.food] };
}

/** Our own match is weak below this: words that may matter were left out. */
const weakBelow = 0.8;

function matchOwn(words: readonly string[], heading: string): FoodMatch | undefined {
  const under = underHeading(words, heading);
  if (under !== undefined) return under;
  const known = lookUp(words);
  if (known !== undefined) return known;
  if (words.length === 0 || tellNoFood(words)) return undefined;
  const found = withoutModifiers(words);
  if (found !== undefined) return found;
  const mended = words.flatMap(word => nameWords(mendUnknown(word) ?? word));
  if (mended.join() === words.join() || tellNoFood(mended)) return undefined;
  const match = lookUp(mended) ?? withoutModifiers(mended);
  return match && { ...match, confidence: rounded(match.confidence * 0.85), how: 'spelling' };
}

/** What the parts of a heading are made into: in "vegetable oil (soybean, canola)" soybean is an oil. */
const kindsOfHeading = [
  'modified',
  'partially',
  'fully',
  'hydrogenated',
  'oil',
  'starch',
  'flour',
  'syrup',
  'vinegar',
  'bran',
  'puree',
  'broth',
  'cheese',
  'juice',
  'concentrate',
];
const oils = new Set(['shortening', 'fat', 'margarine']);
const headingTells = new RegExp([...kindsOfHeading, ...oils].join('|'), 'i');

/** What the heading adds to the words of a part: "oil" to soybean under "vegetable oil". */
function kindsUnder(words: readonly string[], heading: string): readonly string[] {
  if (!headingTells.test(heading)) return [];
  const all = nameWords(heading);
  const from = all.indexOf('from');
  const told = new Set((from < 0 ? all : all.slice(0, from)).map(word => (oils.has(word) ? 'oil' : word)));
  return kindsOfHeading.filter(kind => told.has(kind) && !words.includes(kind));
}

function underHeading(words: readonly string[], heading: string): FoodMatch | undefined {
  const kinds = kindsUnder(words, heading);
  if (kinds.length === 0) return undefined;
  const longer = [...without(words, empty), ...kinds];
  return tellNoFood(longer) ? undefined : lookUp(longer);
}

interface Entry {
  readonly food: ReferenceFood;
  readonly how: 'exact' | 'alias';
}

const inOrder = new Map<string, Entry>();
/** By the words in any order; null where two foods share them ("milk chocolate", "chocolate milk"). */
const inAnyOrder = new Map<string, Entry | null>();
const tableWords = new Set<string>();

for (const food of referenceTable.foods) {
  for (const [at, name] of [food.name, ...food.aliases].entries()) {
    const words = nameWords(name);
    const entry: Entry = { food, how: at === 0 ? 'exact' : 'alias' };
    const key = words.join(' ');
    if (!inOrder.has(key)) inOrder.set(key, entry);
    const bag = words.toSorted().join(' ');
    const other = inAnyOrder.get(bag);
    if (other === undefined) inAnyOrder.set(bag, entry);
    else if (other?.food !== food) inAnyOrder.set(bag, null);
    for (const word of words) tableWords.add(word);
  }
}

const mend = speller(new Set([...tableWords, ...changing, ...noFoodWords, ...sameWord.keys()]));

const kin: ReadonlyMap<ReferenceFood, readonly ReferenceFood[]> = kinOfFoods();

/** First the foods that the law or the trade prints under the same name, then those whose name ends in the same word. */
function kinOfFoods(): Map<ReferenceFood, readonly ReferenceFood[]> {
  const byHead = Map.groupBy(referenceTable.foods, headOf);
  return new Map(
    referenceTable.foods.map(food => {
      const kin = new Set([...(food.mayBe ?? []).map(id => referenceFood(id)!), ...byHead.get(headOf(food))!]);
      kin.delete(food);
      return [food, [...kin].slice(0, 5)];
    }),
  );
}

function headOf(food: ReferenceFood): string {
  return nameWords(food.name).at(-1)!;
}

function matchOf({ food, how }: Entry, confidence: number): FoodMatch {
  return { food, how, confidence, alternatives: kin.get(food)! };
}

function lookUp(words: readonly string[]): FoodMatch | undefined {
  const entry = inOrder.get(words.join(' '));
  if (entry !== undefined) return matchOf(entry, entry.how === 'exact' ? 1 : 0.95);
  if (words.length < 2) return undefined;
  const anyOrder = inAnyOrder.get(words.toSorted().join(' '));
  return anyOrder ? matchOf({ ...anyOrder, how: 'alias' }, 0.9) : undefined;
}

function without(words: readonly string[], ...sets: readonly ReadonlySet<string>[]): string[] {
  return words.filter(word => !sets.some(set => set.has(word)) && word !== '100%' && !/^[\d.]+$/.test(word));
}

/** Leaves words out in the order of what they tell, and says less confidence with each. */
function withoutModifiers(all: readonly string[]): FoodMatch | undefined {
  const cut = all.findIndex((word, at) => at > 0 && tailStarts.has(word));
  const words = cut < 0 ? all : all.slice(0, cut);
  const tail = cut < 0 ? 1 : 0.75;
  const plain = without(words, empty);
  if (plain.length === 0) return undefined;
  const known = lookUp(plain);
  if (known !== undefined)
    return cut < 0 ? { ...known, how: 'alias', confidence: rounded(known.confidence - 0.02) } : guess(known, known.confidence * tail);
  for (const [sets, confidence] of steps) {
    const fewer = without(plain, ...sets);
    // The same words have been looked up already.
    const match = fewer.length < plain.length ? lookUp(fewer) : undefined;
    if (match !== undefined) return guess(match, confidence * tail);
  }
  return withoutLeadingWords(plain, tail);
}

const steps: readonly (readonly [readonly ReadonlySet<string>[], number])[] = [
  [[pieces], 0.85],
  [[slight], 0.8],
  [[slight, pieces], 0.75],
  [[heat], 0.6],
  [[heat, slight, pieces], 0.55],
];

function guess(match: FoodMatch, confidence: number): FoodMatch {
  return { ...match, how: 'head-noun', confidence: rounded(confidence) };
}

function rounded(confidence: number): number {
  return Math.round(confidence * 100) / 100;
}

/** "Montmorency cherries": a first word that the table does not know is taken for a variety or a place. */
function withoutLeadingWords(words: readonly string[], tail: number): FoodMatch | undefined {
  const first = words[0]!;
  if (words.length < 2 || isKnown(first) || hidesKnown(first) || manyFoods.has(words.at(-1)!)) return undefined;
  const rest = words.slice(1);
  const match = lookUp(rest) ?? lookUp(without(rest, slight, heat, pieces));
  return match ? guess(match, 0.5 * tail) : withoutLeadingWords(rest, tail);
}

/** A word with a meaning of its own here: never mended, never passed over. */
function isKnown(word: string): boolean {
  return [tableWords, changing, empty, slight, heat, tailStarts].some(set => set.has(word));
}

function mendUnknown(word: string): string | undefined {
  return isKnown(word) ? undefined : mend(word);
}

/** A number, a slip of the pen, or two words grown together: "deyhdrated", "driedunsweetened". */
function hidesKnown(word: string): boolean {
  if (/[\d%]/.test(word) || mend(word) !== undefined) return true;
  for (let length = 4; length < word.length; length++)
    if (changing.has(word.slice(0, length)) || changing.has(word.slice(-length))) return true;
  return false;
}
