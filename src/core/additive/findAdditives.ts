import { codePointPositions } from '#core/statement/codePoints.ts';
import type { Ingredient, Statement } from '#core/statement/statement.ts';
import { type Token, tokenize } from '#core/statement/tokenize.ts';
import type { AdditiveClass, AdditiveFinding, Certainty } from './additive.ts';
import { type ClassFacts, classesOf } from './classes.ts';
import { type Match, matchWords } from './matchWords.ts';
import { type Word, wordsOf } from './words.ts';

/**
 * Finds every additive that a statement names, in the order it names them; an additive of two classes gives one
 * finding per class. Look-alikes (lecithin, vitamin phosphates, iron phosphates) and negations are reported with
 * `counts: false`; texts that only resemble one (calcium chloride, polysorbate) are not reported at all.
 *
 * In "WATER, SODIUM PHOSPHATES (TO RETAIN MOISTURE)" it finds sodium phosphates at 7 to 23, as a phosphate that counts
 * and as a sodium additive. `tokens` may be those that `parseStatement` gave, which saves cutting the text again. Rules ADD-1 to ADD-15 in docs/rules/additive.md; sources in data/additives.md.
 */
export function findAdditives(
  statement: Statement,
  tokens: readonly Token[] = tokenize(statement.text).tokens,
): readonly AdditiveFinding[] {
  const { text } = statement;
  const words = wordsOf(tokens);
  const matches = matchWords(words);
  if (matches.length === 0) return [];
  const position = codePointPositions(text);
  const findings: AdditiveFinding[] = [];
  matches.forEach((match, index) => {
    if (match.needsNeighbor && !hasNeighbor(matches, index)) return;
    const classes = classesOf(match);
    if (classes.length === 0) return;
    const from = words[match.from]!.start;
    const to = words[match.to]!.end;
    const start = position(from);
    const end = position(to);
    const place = placeIn(statement.ingredients, start);
    // "BAKING POWDER (SODIUM BICARBONATE, …)": its list says what is in it, and is judged instead.
    if (place.listOverrides(end) && classes[0]!.namesMixture) return;
    const negated = isNegated(words, match);
    for (const facts of classes) findings.push(finding(facts, match, negated, place, text.slice(from, to), start, end));
  });
  return findings;
}

function finding(
  facts: ClassFacts,
  match: Match,
  negated: boolean,
  place: StatementPlace,
  found: string,
  start: number,
  end: number,
): AdditiveFinding {
  const certainty = negated ? 'named' : certaintyOf(facts, match, place.presence);
  return {
    id: facts.id,
    name: facts.name,
    ins: facts.ins,
    class: facts.class,
    counts: facts.counts && !negated,
    certainty,
    found,
    start,
    end,
    path: place.path,
    why: negated ? `The label says it holds no ${facts.name}: not counted.` : facts.why + certaintyText[certainty],
  };
}

const certaintyText: Record<Certainty, string> = {
  named: '',
  alternative: ' One of several that may be in the package.',
  'may-contain': ' The statement only allows it.',
  possible: '',
  misspelled: ' The spelling on the label was mended: check the package.',
};

function certaintyOf(facts: ClassFacts, match: Match, presence: Ingredient['presence']): Certainty {
  if (facts.possible) return 'possible';
  if (presence === 'may-contain') return 'may-contain';
  if (presence === 'alternative' || match.alternative) return 'alternative';
  return match.repaired ? 'misspelled' : 'named';
}

/** An abbreviation with other meanings stands only near another additive of the same list. */
function hasNeighbor(matches: readonly Match[], index: number): boolean {
  const near = (other: Match | undefined): boolean =>
    other !== undefined && !other.needsNeighbor && Math.abs(other.from - matches[index]!.from) <= 6;
  return near(matches[index - 1]) || near(matches[index + 1]);
}

const negations = new Set(['no', 'not', 'without', 'zero', 'never', 'sans']);

/** "no added phosphates", "without …", "free of …" up to four words before; "phosphate free" behind. A separator ends the reach. */
function isNegated(words: readonly Word[], match: Match): boolean {
  for (let i = match.from - 1; i >= 0 && i >= match.from - 4; i--) {
    const word = words[i]!;
    if (!word.isWord) break;
    if (negations.has(word.text)) return true;
    if (word.text === 'free' && (words[i + 1]?.text === 'of' || words[i + 1]?.text === 'from')) return true;
  }
  return words[match.to + 1]?.text === 'free' && words[match.to + 2]?.text !== 'of';
}

interface StatementPlace {
  readonly path: readonly string[];
  readonly presence: Ingredient['presence'];
  /** The name that ends at `end` heads a list of its own. */
  readonly listOverrides: (end: number) => boolean;
}

/** The ingredients around a position, outermost first, and the weakest presence among them. */
function placeIn(ingredients: readonly Ingredient[], start: number): StatementPlace {
  const path: string[] = [];
  let presence: Ingredient['presence'] = 'certain';
  let level = ingredients;
  let innermost: Ingredient | undefined;
  for (;;) {
    const inside = findCovering(level, start);
    if (inside === undefined) break;
    if (inside.presence === 'may-contain' || (inside.presence === 'alternative' && presence === 'certain')) presence = inside.presence;
    innermost = inside;
    if (inside.parts.length === 0 || !inside.parts.some(part => part.start <= start && start < part.end)) {
      break;
    }
    path.push(inside.name);
    level = inside.parts;
  }
  const parts = innermost?.parts ?? [];
  return { path, presence, listOverrides: end => parts.length > 0 && parts[0]!.start >= end };
}

/** Ingredients of a level stand in order, so the last one that starts at or before the position is the one. */
function findCovering(level: readonly Ingredient[], start: number): Ingredient | undefined {
  let lo = 0;
  let hi = level.length - 1;
  while (lo <= hi) {
    const middle = (lo + hi) >> 1;
    const ingredient = level[middle]!;
    if (ingredient.end <= start) lo = middle + 1;
    else if (ingredient.start > start) hi = middle - 1;
    else return ingredient;
  }
  return undefined;
}

export type { AdditiveClass };
