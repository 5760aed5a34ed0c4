import type { Token } from '#core/statement/text/token.ts';
import { adjectives, inseparable } from '#core/statement/text/vocabulary.ts';
import { type Draft, leadWithNote, newDraft } from './draft.ts';
import { draftOf, type Source } from './draftOf.ts';
import type { Item } from './item.ts';
import { nameOf } from './nameOf.ts';
import { leadSentenceLength, noteStart } from './notes.ts';

/** "canola and/or palm oil": one group of alternatives; undefined when nothing is to choose from. */
export function choiceOf(source: Source, item: Item): Draft | undefined {
  const { words } = item;
  const firstOr = words.length < 3 ? -1 : words.findIndex(word => isOr(word.text));
  // "citric acid added to protect color or flavor": the "or" of a note chooses nothing.
  if (firstOr < 0 || isBetween(noteStart(words), 0, firstOr)) return undefined;
  const sides = sidesOf(item, startsAlternative);
  if (sides.length < 2 || isOneName(words)) return undefined;

  const parts = sides.map(side => draftOf(source, side));
  for (const part of parts) part.presence = 'alternative';
  const choice = newDraft('', Math.min(words[0]!.start, parts[0]!.start), Math.max(words.at(-1)!.end, parts.at(-1)!.end));
  choice.kind = 'group';
  choice.unordered = true;
  choice.parts = parts;
  choice.name = parts.map((part, index) => (index === 0 ? '' : jointBefore(source.text, words, sides[index]!)) + part.name).join('');
  return choice;
}

export function isOr(word: string): boolean {
  return word === 'or' || word === 'and/or';
}

function startsAlternative(words: readonly Token[], index: number): boolean {
  const { text } = words[index]!;
  if (text !== 'or') return text === 'and/or';
  const next = words[index + 1]?.text;
  return next !== 'less' && next !== 'more';
}

/** The joint as canonical text, in capitals where it is printed so. */
function jointBefore(text: string, words: readonly Token[], side: Side): string {
  const joint = words[side.from - 1]!;
  const printed = text.slice(joint.start, joint.end);
  return ` ${printed === printed.toUpperCase() ? joint.text.toUpperCase() : joint.text} `;
}

/** "salt and pepper" as two ingredients, where "and" joins ingredients and not words of one name. */
export function pairOf(source: Source, item: Item, mayEndList: boolean): Draft[] | undefined {
  const { words } = item;
  if (words.length < 3 || !words.some(isAnd) || !(mayEndList || words.some(isChemical))) return undefined;
  const sides = sidesOf(item, (all, index) => isAnd(all[index]!));
  const [left, right] = sides;
  if (left === undefined || right === undefined || sides.length > 2 || !areSeparable(words, left, right)) return undefined;
  return sides.map(side => {
    const lead = leadSentenceLength(side.words);
    if (lead === 0 || lead === side.words.length) return draftOf(source, side);
    const draft = draftOf(source, { ...side, words: side.words.slice(lead) });
    leadWithNote(draft, nameOf(source.text, side.words.slice(0, lead)));
    return draft;
  });
}

function isAnd(word: Token): boolean {
  return word.text === 'and' || word.kind === 'ampersand';
}

const cation = /^(?:mono|di|tri|tetra)?(?:sodium|potassium|calcium|magnesium|ammonium)$/;
const chemicalWords: ReadonlySet<string> = new Set(['acid', 'tbhq', 'bha', 'bht', 'edta']);

/** Salts and acids are told apart at "and" anywhere in a list, since their names are whole: "BHA and BHT". */
function isChemical(word: Token): boolean {
  return chemicalWords.has(word.text) || cation.test(word.text);
}

function areSeparable(words: readonly Token[], left: Side, right: Side): boolean {
  if (isOneName(words)) return false;
  if (left.words.some(({ text }) => text === 'of' || text === 'with' || text === 'in' || text === 'from')) return false;
  const only = left.words.length === 1 ? left.words[0]! : undefined;
  // "natural and …", "calcium and sodium caseinates", "tri- and …": the left side needs the right side's noun.
  if (only !== undefined && (adjectives.has(only.text) || cation.test(only.text) || only.hyphenAfter)) return false;
  if (isBetween(noteStart(words), 0, right.from)) return false;
  return left.words.some(isWord) && right.words.some(isWord);
}

function isBetween(index: number, after: number, before: number): boolean {
  return index > after && index < before;
}

function isWord(token: Token): boolean {
  return token.kind === 'word';
}

/** The longest name with "and" or "or" in it; the bound keeps the pattern from running over endless texts. */
const longestJoinedName = 16;

function isOneName(words: readonly Token[]): boolean {
  return words.length <= longestJoinedName && inseparable.test(words.map(word => word.text).join(' '));
}

/** One side of "and" or "or", with the brackets that stand in it. */
interface Side extends Item {
  /** Index of its first word in the item. */
  readonly from: number;
}

function sidesOf(item: Item, isJoint: (words: readonly Token[], index: number) => boolean): Side[] {
  const { words, brackets } = item;
  const sides: Side[] = [];
  let from = 0;
  let firstBracket = 0;
  for (let index = 0; index <= words.length; index++) {
    if (index < words.length && !isJoint(words, index)) continue;
    if (index > from) {
      // A bracket right behind the joint belongs to the side that follows.
      let bracketEnd = firstBracket;
      while (bracketEnd < brackets.length && (index === words.length || brackets[bracketEnd]!.afterWords <= index)) bracketEnd += 1;
      sides.push({ words: words.slice(from, index), brackets: brackets.slice(firstBracket, bracketEnd), from });
      firstBracket = bracketEnd;
    }
    from = index + 1;
  }
  return sides;
}
