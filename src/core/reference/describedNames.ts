import { isAbbreviated, writtenOut } from './abbreviations.ts';
import { isIngredientGroup } from './describedGroups.ts';
import type { DescribedFood } from './largerTable.ts';
import { nameWords } from './nameWords.ts';
import { tellNoFood } from './noFood.ts';

/** The name that ingredient statements may print for a described food. */
export interface DescribedName {
  /** In the order of the description: bean, kidney, red. */
  readonly words: readonly string[];
  /** The word that the name must end in when it is in another order: "red kidney beans". */
  readonly head: string;
  /** Parts of the description that were left out: fewer is plainer. */
  readonly leftOut: number;
}

/** A class in front of the name: "Spices, basil, dried", "Fish, cod, Atlantic, raw". */
const classes =
  /^(?:spices?|nuts?|seeds?|fish|crustaceans?|mollusks?|beverages?|snacks?|candies|sweeteners?|leavening agents?|game meat|vegetable oil|fruit butters)$/;

/** Foods of one eater or one maker, and dishes, whatever their group. */
const never =
  /^(?:baby ?foods?|infant|inf form|child formula|toddler|fast foods?|fast fd|restaurant|rest-prep|school lunch|usda c|cereals?|formulated|nutrition|nutritional|meal replacement|supplement|entrees?|dinner|lunch|sandwich|pizza|burger|mcdonald|girl scouts|vitamin)/;

/** Parts of a description that keep the plain food: it is as it grows, whole, not yet prepared. */
const plainForms =
  /^(?:raw|fresh|unprepared|uncooked|unheated|undiluted|mature seeds?|mature|all (?:varieties|types|classes|commercial varieties|grades|purpose|areas)|year round average|regular|plain|unsalted|without (?:added )?salt|no salt added|commercial(?:ly)?(?: prepared)?|mixed species|wild|farmed|domestic|imported|industrial|generic|unenriched|whole|kernels?|flesh(?: and skin)?|with skin|without skin|with peel|without peel|peeled|unpeeled|salad or cooking|bulk)$/;

/** Said of a food that is cooked already, they say nothing more. */
const afterCooked = /^(?:boiled|drained|steamed|boiled drained|dry heat|moist heat)$/;

/** In brackets, words that make another food of it: "(partially hydrogenated)". Other brackets hold further names. */
const tellingBrackets =
  /\([^)]*\b(?:hydrogenated|dried|dehydrated|powder|sweetened|salted|canned|cooked|skim|low-?fat|non-?fat|concentrate|fortified|enhanced|with|without)\b/i;

/** Said of a spice, "fresh" tells: the bare name of a spice on a label is the dried one. */
const spices = '0200';

/** Their bare name on a label may tell of milk as well as of meat. */
const milked: ReadonlySet<string> = new Set(['goat', 'sheep', 'cow', 'buffalo']);

/** In grains and pasta "dry" is the plain form. In milk it is another food. */
const dryIsPlain: ReadonlySet<string> = new Set(['1600', '2000']);

/**
 * The name of a described food, or undefined where ingredient names must not lead to it: baby foods, fast foods, restaurant
 * and branded rows, additives. Every word that tells is kept, so that "Carrots, cooked" never answers to carrots.
 *
 * "Cheese, cheddar" gives cheese, cheddar with the head cheese; "Broccoli, raw" gives broccoli. Rule REF-14.
 */
export function describedName({ description, group }: DescribedFood): DescribedName | undefined {
  if (!isIngredientGroup(group)) return undefined;
  const isShort = isAbbreviated(description);
  const whole = isShort ? writtenOut(description) : description;
  if (tellingBrackets.test(whole)) return undefined;
  const text = whole.replace(/\([^)]*\)?/g, ' ');
  // A word in capitals among others is a maker's name.
  if (!isShort && /(?<![\p{L}'])\p{Lu}{2,}/u.test(text)) return undefined;
  const parts = text
    .toLowerCase()
    .split(/[,;]/)
    .map(part => part.replace(/\s+/g, ' ').trim())
    .filter(part => part !== '');
  if (parts.length === 0 || never.test(parts[0]!)) return undefined;
  const named = parts.length > 1 && classes.test(parts[0]!) ? parts.slice(1) : parts;
  const isCooked = named.includes('cooked');
  const isPlain = (part: string): boolean =>
    (plainForms.test(part) && !(part === 'fresh' && group === spices)) ||
    (isCooked && afterCooked.test(part)) ||
    (part === 'dry' && group !== null && dryIsPlain.has(group));
  const kept = named.filter((part, at) => at === 0 || !isPlain(part));
  const words = kept.flatMap(nameWords);
  const head = nameWords(kept[0]!).at(-1);
  if (words.length === 1 && milked.has(words[0]!)) return undefined;
  if (head === undefined || new Set(words).size !== words.length || tellNoFood(words)) return undefined;
  return { words, head, leftOut: named.length - kept.length };
}
