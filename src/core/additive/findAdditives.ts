import { boundEnd } from '#core/statement/reading/threshold.ts';
import type { Ingredient, Statement } from '#core/statement/statement.ts';
import { codePointPositions } from '#core/statement/text/codePoints.ts';
import type { Token } from '#core/statement/text/token.ts';
import { tokenize } from '#core/statement/text/tokenize.ts';
import type { AdditiveFinding, Certainty } from './additive.ts';
import { type ClassFacts, classesOf } from './classes.ts';
import type { Match } from './match.ts';
import { matchWords } from './matchWords.ts';
import type { Word } from './word.ts';
import { wordsOf } from './words.ts';

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
  for (let index = 0; index < matches.length; index++) {
    const match = matches[index]!;
    if (match.needsNeighbor && !hasNeighbor(matches, index)) continue;
    const classes = classesOf(match);
    if (classes.length === 0) continue;
    const from = words[match.from]!.start;
    const to = words[match.to]!.end;
    const start = position(from);
    const end = position(to);
    const place = placeIn(statement.ingredients, start);
    // "BAKING POWDER (SODIUM BICARBONATE, …)": its list says what is in it, and is judged instead.
    if (classes[0]!.namesMixture && place.partsFrom >= end) continue;
    const negated = isNegated(words, match);
    const found = text.slice(from, to);
    for (const facts of classes) findings.push(finding(facts, match, negated, place, found, start, end));
  }
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

/** "no added sodium or potassium phosphates" has four words between; none of the real statements measured has more. */
const negationReach = 4;
const negations = new Set(['no', 'not', 'without', 'zero', 'never', 'sans']);

/**
 * "no added phosphates", "without …", "free of …" up to four words before; "phosphate free" behind. A separator ends the reach, and
 * "no more than 2%" denies nothing: what is at most so much is there.
 */
function isNegated(words: readonly Word[], match: Match): boolean {
  for (let i = match.from - 1; i >= 0 && i >= match.from - negationReach; i--) {
    const { isWord, text } = words[i]!.facts;
    if (!isWord) break;
    if (negations.has(text)) return !isBound(words, i);
    const next = text === 'free' ? words[i + 1]!.facts.text : '';
    if (next === 'of' || next === 'from') return true;
  }
  return words[match.to + 1]?.facts.text === 'free' && words[match.to + 2]?.facts.text !== 'of';
}

/** "not over …", "no more than …", "without exceeding …" */
function isBound(words: readonly Word[], at: number): boolean {
  const longestBound = 5;
  const texts = words.slice(at, at + longestBound).map(word => word.facts);
  return texts[1]?.text === 'exceeding' || boundEnd(texts, 0) !== undefined;
}

interface StatementPlace {
  readonly path: readonly string[];
  readonly presence: Ingredient['presence'];
  /** Where the parts of the innermost ingredient begin; before everything when it has none. */
  readonly partsFrom: number;
}

/** The ingredients around a position, outermost first, and the weakest presence among them. */
function placeIn(ingredients: readonly Ingredient[], start: number): StatementPlace {
  const path: string[] = [];
  let presence: Ingredient['presence'] = 'certain';
  let inside = findCovering(ingredients, start);
  while (inside !== undefined) {
    if (inside.presence === 'may-contain' || (inside.presence === 'alternative' && presence === 'certain')) presence = inside.presence;
    const part = findCovering(inside.parts, start);
    if (part === undefined) break;
    path.push(inside.name);
    inside = part;
  }
  return { path, presence, partsFrom: inside?.parts[0]?.start ?? -1 };
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
