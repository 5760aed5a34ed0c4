import { allergenRunEnd, parseNumber } from './clauses.ts';
import { type Draft, newDraft } from './draft.ts';
import { groupKind } from './headings.ts';
import { nameOf } from './nameOf.ts';
import type { Token } from './tokenize.ts';
import { functionWords, inseparable, noteOpeners, noteWords, purposeNouns, purposeVerbs } from './vocabulary.ts';

/** A bracket that stands in an item, with what was read inside it. */
export interface Bracket {
  readonly drafts: Draft[];
  /** The tokens inside, the closing bracket included when there was one. */
  readonly tokens: readonly Token[];
  readonly start: number;
  readonly end: number;
  /** How many words of the item stand before it. */
  readonly afterWords: number;
}

/** The words and brackets between two separators. */
export interface Item {
  readonly words: Token[];
  readonly brackets: Bracket[];
  marks: number;
}

export interface ItemReading {
  readonly drafts: Draft[];
  /** The item opened with "or" or "and/or": it and its brothers are alternatives. */
  readonly leadsWithOr: boolean;
  /** The item was a note to the one before ("BHT, to preserve freshness"): where it ends. */
  readonly endOfNote?: number;
}

const leadWords = new Set(['and', 'or', 'and/or', '&', 'plus', 'also', '-', '/']);
const trailWords = new Set(['and', 'or', 'and/or', '&', '-', '/', 'plus']);

/**
 * Turns what stands between two separators into ingredients: usually one; two for "salt and pepper" at the end of a
 * list; none for a note that belongs to the ingredient before.
 */
export function readItem(text: string, item: Item, previous: Draft | undefined, mayBeLastOfList: boolean): ItemReading {
  let from = 0;
  let to = item.words.length;
  let leadsWithOr = false;
  while (from < to && leadWords.has(item.words[from]!.text)) {
    if (item.words[from]!.text === 'or' || item.words[from]!.text === 'and/or') leadsWithOr = true;
    from += 1;
  }
  while (to > from && trailWords.has(item.words[to - 1]!.text)) to -= 1;
  const lead = item.words.length < 3 ? 0 : leadSentenceLength(from === 0 ? item.words : item.words.slice(from, to));
  const leadNote = lead > 0 && from + lead < to ? nameOf(text, item.words.slice(from, from + lead)) : undefined;
  if (leadNote !== undefined) from += lead;
  const words = from === 0 && to === item.words.length ? item.words : item.words.slice(from, to);
  const brackets =
    from === 0 ? item.brackets : item.brackets.map(bracket => ({ ...bracket, afterWords: Math.max(0, bracket.afterWords - from) }));

  if (words.length === 0) return { drafts: bracketAlone(text, brackets, previous), leadsWithOr };
  const drafts = readNamed(text, words, brackets, previous, mayBeLastOfList);
  if (leadNote !== undefined) drafts.at(-1)?.notes.unshift(leadNote);
  if (drafts.length > 0) return { drafts, leadsWithOr };
  return { drafts, leadsWithOr, endOfNote: previous!.end };
}

function readNamed(
  text: string,
  words: readonly Token[],
  brackets: readonly Bracket[],
  previous: Draft | undefined,
  mayBeLastOfList: boolean,
): Draft[] {
  if (previous !== undefined && isNoteItem(words)) {
    const end = Math.max(words.at(-1)!.end, brackets.at(-1)?.end ?? 0);
    previous.notes.push(nameOf(text, words));
    if (end > previous.end) previous.end = end;
    for (const bracket of brackets) previous.parts.push(...bracket.drafts);
    return [];
  }

  const choice = words.length > 2 && words.some(isOrWord) ? splitAt(words, isOr) : noSides;
  if (choice.length > 1 && !inseparable.test(joined(words))) return [choiceOf(text, words, brackets, choice)];

  if (words.length > 2 && words.some(isAndWord) && (mayBeLastOfList || words.some(isChemical))) {
    const sides = splitAt(words, isAnd);
    if (sides.length === 2 && separable(sides, words)) {
      return sides.map((side, index) => {
        const lead = leadSentenceLength(side.words);
        const draft = draftOf(text, side.words.slice(lead), bracketsOf(brackets, sides, index));
        if (lead > 0) draft.notes.unshift(nameOf(text, side.words.slice(0, lead)));
        return draft;
      });
    }
  }
  return [draftOf(text, words, brackets)];
}

function draftOf(text: string, allWords: readonly Token[], brackets: readonly Bracket[]): Draft {
  const start = Math.min(allWords[0]!.start, brackets[0]?.start ?? Number.POSITIVE_INFINITY);
  const end = Math.max(allWords.at(-1)!.end, brackets.at(-1)?.end ?? 0);
  let words = allWords;
  const notes: string[] = [];

  const noteFrom = noteStart(words);
  if (noteFrom > 0) {
    notes.push(nameOf(text, words.slice(noteFrom)));
    words = words.slice(0, noteFrom);
    while (words.length > 1 && trailWords.has(words.at(-1)!.text)) words = words.slice(0, -1);
  }
  let declared: { percent: number; decimals: number } | undefined;
  const tail = words.at(-1);
  if (words.length > 2 && tail!.kind === 'percent' && words.at(-2)!.kind === 'number') {
    declared = percentOf(words.at(-2)!);
    words = words.slice(0, -2);
  }
  const unmarked = words.filter(word => word.text !== 'organic');
  const organic = unmarked.length > 0 && unmarked.length < words.length;
  if (organic) words = unmarked;

  const draft = newDraft(nameOf(text, words), start, end);
  draft.organic = organic;
  draft.notes = notes;
  for (const bracket of brackets) {
    const inside = contentOf(bracket);
    if (inside.length === 2 && inside[0]!.kind === 'number' && inside[1]!.kind === 'percent') {
      declared = percentOf(inside[0]!);
    } else if (isNote(inside)) {
      const note = nameOf(text, inside.filter(isNamePart));
      if (note !== '') draft.notes.push(note);
    } else if (bracket.drafts.length === 0) {
      const note = nameOf(text, inside.filter(isNamePart));
      if (note !== '' && inside.some(token => token.kind === 'word')) draft.notes.push(note);
      const limit = inside.length > 0 ? bracketLimit(inside) : undefined;
      if (limit !== undefined) {
        draft.atMostPercent = limit;
        draft.notes.pop();
      }
    } else if (bracket.drafts.length === 1 && isFunctionName(bracket.drafts[0]!))
      draft.notes.push(bracket.drafts[0]!.name, ...bracket.drafts[0]!.notes);
    else draft.parts.push(...bracket.drafts);
  }
  if (declared !== undefined && declared.percent <= 100) {
    draft.declaredPercent = declared.percent;
    draft.declaredDecimals = declared.decimals;
  }
  const group = draft.parts.length > 0 ? groupKind(words) : undefined;
  if (group !== undefined) {
    draft.kind = 'group';
    if (group.outOfOrder) draft.outOfOrder = true;
  }
  const lastPart = draft.parts.at(-1);
  if (lastPart !== undefined && (lastPart.unordered || lastPart.presence === 'alternative') && isBlendOfAlternatives(draft))
    for (const part of draft.parts) if (part.presence === 'certain') part.presence = 'alternative';
  return draft;
}

/** "(preservative, contains sulfites)": what is left of the bracket names a function only. */
function isFunctionName(draft: Draft): boolean {
  return (
    draft.parts.length === 0 &&
    draft.name
      .toLowerCase()
      .split(/[\s-]+/)
      .every(word => functionWords.has(word))
  );
}

/** "(less than 2%)" inside an item's bracket: a limit of that item. */
function bracketLimit(inside: readonly Token[]): number | undefined {
  const percentAt = inside.findIndex(token => token.kind === 'percent' || token.text === 'percent');
  const hasLess = inside.some(token => token.text === 'less' || token.kind === 'less-than');
  if (percentAt < 1 || !hasLess) return undefined;
  const value = parseNumber(inside[percentAt - 1]!.text);
  return Number.isFinite(value) ? value : undefined;
}

/** "vegetable oil (soybean, palm or canola)": the last one's "or" speaks of all. Only in blends of fats and function groups. */
function isBlendOfAlternatives(draft: Draft): boolean {
  return (
    (draft.kind === 'group' && !draft.outOfOrder) || /\b(?:oils?|shortening|fats?|starter|culture|leavening|blend)\b/i.test(draft.name)
  );
}

function choiceOf(text: string, words: readonly Token[], brackets: readonly Bracket[], choice: readonly Side[]): Draft {
  const end = Math.max(words.at(-1)!.end, brackets.at(-1)?.end ?? 0);
  const draft = newDraft('', Math.min(words[0]!.start, brackets[0]?.start ?? Number.POSITIVE_INFINITY), end);
  draft.kind = 'group';
  draft.unordered = true;
  choice.forEach((side, index) => {
    const part = draftOf(text, side.words, bracketsOf(brackets, choice, index));
    part.presence = 'alternative';
    draft.parts.push(part);
    const joint = words[side.from - 1];
    if (index > 0) draft.name += isUpper(text, joint!) ? ` ${joint!.text.toUpperCase()} ` : ` ${joint!.text} `;
    draft.name += part.name;
  });
  return draft;
}

const noSides: readonly Side[] = [];

function isUpper(text: string, word: Token): boolean {
  const printed = text.slice(word.start, word.end);
  return printed === printed.toUpperCase();
}

interface Side {
  readonly words: readonly Token[];
  /** Index of the first word in the item. */
  readonly from: number;
}

function splitAt(words: readonly Token[], isJoint: (words: readonly Token[], index: number) => boolean): Side[] {
  const sides: Side[] = [];
  let from = 0;
  for (let index = 0; index <= words.length; index++) {
    if (index < words.length && !isJoint(words, index)) continue;
    if (index > from) sides.push({ words: words.slice(from, index), from });
    from = index + 1;
  }
  return sides;
}

function bracketsOf(brackets: readonly Bracket[], sides: readonly Side[], index: number): Bracket[] {
  const from = sides[index]!.from;
  const next = sides[index + 1]?.from ?? Number.POSITIVE_INFINITY;
  const isLast = index === sides.length - 1;
  return brackets
    .filter(bracket => (bracket.afterWords > from && bracket.afterWords < next) || (isLast && bracket.afterWords >= next))
    .map(bracket => ({ ...bracket, afterWords: bracket.afterWords - from }));
}

function isOr(words: readonly Token[], index: number): boolean {
  const word = words[index]!.text;
  if (word === 'and/or') return true;
  return word === 'or' && words[index + 1]?.text !== 'less' && words[index + 1]?.text !== 'more';
}

function isOrWord(word: Token): boolean {
  return word.text === 'or' || word.text === 'and/or';
}

function isAndWord(word: Token): boolean {
  return word.text === 'and' || word.kind === 'ampersand';
}

function isAnd(words: readonly Token[], index: number): boolean {
  return isAndWord(words[index]!);
}

const cations = /^(?:mono|di|tri|tetra)?(?:sodium|potassium|calcium|magnesium|ammonium)$/;
function isCation(word: Token): boolean {
  return cations.test(word.text);
}

const chemicalWords = new Set(['acid', 'tbhq', 'bha', 'bht', 'edta']);
function isChemical(word: Token): boolean {
  return chemicalWords.has(word.text) || isCation(word);
}

/** Left sides that need the right side's noun: "natural and …", "calcium and sodium caseinates", "extractives of turmeric and paprika". */
const adjectives = new Set(
  'natural artificial red green black white yellow blue brown wild ripe dried fresh frozen roasted sweet sour hot mild live salted smoked skim whole nonfat corn wheat rice hydrolyzed hydrolysed hydrogenated vegetable fruit mono di tri citric malic lactic phosphoric'.split(
    ' ',
  ),
);

function separable(sides: readonly Side[], words: readonly Token[]): boolean {
  const [left, right] = sides as [Side, Side];
  if (inseparable.test(joined(words))) return false;
  if (left.words.some(word => word.text === 'of' || word.text === 'with' || word.text === 'in' || word.text === 'from')) return false;
  const onlyLeft = left.words.length === 1 ? left.words[0]! : undefined;
  if (onlyLeft !== undefined && (adjectives.has(onlyLeft.text) || isCation(onlyLeft) || onlyLeft.hyphenAfter)) return false;
  if (noteStart(words) > 0 && noteStart(words) < right.from) return false;
  return right.words.some(word => word.kind === 'word') && left.words.some(word => word.kind === 'word');
}

function joined(words: readonly Token[]): string {
  return words.map(word => word.text).join(' ');
}

function bracketAlone(text: string, brackets: readonly Bracket[], previous: Draft | undefined): Draft[] {
  const drafts: Draft[] = [];
  for (const bracket of brackets) {
    const inside = contentOf(bracket);
    if (previous !== undefined && isNote(inside)) {
      previous.notes.push(nameOf(text, inside.filter(isNamePart)));
      if (bracket.end > previous.end) previous.end = bracket.end;
    } else drafts.push(...bracket.drafts);
  }
  return drafts;
}

function contentOf(bracket: Bracket): Token[] {
  return bracket.tokens.filter(token => token.kind !== 'open' && token.kind !== 'close' && token.kind !== 'mark');
}

function isNamePart(token: Token): boolean {
  return (
    token.kind === 'word' || token.kind === 'number' || token.kind === 'percent' || token.kind === 'ampersand' || token.kind === 'slash'
  );
}

/** True when a bracket says why, whence or how, and names no part. */
function isNote(inside: readonly Token[]): boolean {
  const first = inside[0];
  if (first === undefined) return true;
  const separators = inside.filter(token => token.kind === 'comma' || token.kind === 'semicolon').length;
  if (first.text === 'to' && purposeVerbs.has(inside[1]?.text ?? '')) return true;
  if (purposeVerbs.has(first.text) && separators === 0 && inside.length > 1) return true;
  if (leadSentenceLength(inside) === inside.length) return true;
  if (first.text === 'contains' || first.text === 'contain')
    return allergenRunEnd(inside, inside[1]?.kind === 'colon' ? 2 : 1) !== undefined;
  if (noteOpeners.has(first.text) && separators === 0 && !(first.text === 'a' && inside.length === 1)) return true;
  return (
    separators === 0 &&
    inside.every(token =>
      token.kind === 'word'
        ? functionWords.has(token.text) || noteWords.has(token.text)
        : token.kind === 'dash' || token.kind === 'number' || token.kind === 'ampersand',
    )
  );
}

function isNoteItem(words: readonly Token[]): boolean {
  const [first, second] = words;
  if (first === undefined || second === undefined) return false;
  if (first.text === 'to') return purposeVerbs.has(second.text);
  if (first.text === 'for' || first.text === 'as') return purposeNouns.has(second.text);
  if (first.text === 'added' || first.text === 'used') return second.text === 'to' || second.text === 'for' || second.text === 'as';
  return false;
}

/** Where a note without brackets begins: "potassium sorbate | as a preservative"; 0 when there is none. */
function noteStart(words: readonly Token[]): number {
  for (let index = 1; index < words.length - 1; index++) {
    const word = words[index]!.text;
    const next = words[index + 1]!.text;
    const begins =
      (word === 'to' && purposeVerbs.has(next)) ||
      ((word === 'for' || word === 'as') && purposeNouns.has(next)) ||
      ((word === 'added' || word === 'used') && (next === 'to' || next === 'for' || next === 'as'));
    if (begins) return index;
  }
  return 0;
}

/** "freshness preserved by BHT", "colored with annatto": how many words lead in. */
function leadSentenceLength(words: readonly Token[]): number {
  const last = Math.min(3, words.length - 1);
  for (let index = 0; index < last; index++) {
    const word = words[index]!.text;
    const next = words[index + 1]?.text;
    if (leadVerbs.has(word) && (next === 'by' || next === 'with')) return index === 0 || leadSubjects.has(words[0]!.text) ? index + 2 : 0;
  }
  return 0;
}
const leadVerbs = new Set(['preserved', 'protected', 'maintained', 'colored', 'coloured', 'retained', 'stabilized']);
const leadSubjects = new Set(['freshness', 'color', 'colour', 'flavor', 'quality', 'freshly']);

function percentOf(token: Token): { percent: number; decimals: number } | undefined {
  const percent = parseNumber(token.text);
  if (!Number.isFinite(percent)) return undefined;
  const decimals = /[.,](\d+)$/.exec(token.text)?.[1]?.length ?? 0;
  return { percent, decimals };
}
