import type { Token } from '#core/statement/text/token.ts';
import { functionWords, trailJoints } from '#core/statement/text/vocabulary.ts';
import { type Bracket, insideOf, listsParts } from './bracket.ts';
import { addNote, addParts, type Draft, newDraft } from './draft.ts';
import { groupKind } from './headings.ts';
import type { GrowingItem, Item } from './item.ts';
import { nameOf, noteText } from './nameOf.ts';
import { isCondition, isNote, noteStart } from './notes.ts';
import { parseNumber, percentAt, thresholdAt } from './threshold.ts';

/** The statement as text and as tokens. */
export interface Source {
  readonly text: string;
  readonly tokens: readonly Token[];
}

/** The ingredient that a plain item names: its words as they stand. */
export function plainDraft(source: Source, item: GrowingItem): Draft {
  const { text, tokens } = source;
  const { start } = item.firstWord(tokens);
  const { end } = item.lastWord(tokens);
  const draft = newDraft(text.slice(start, end), start, end);
  if (item.brackets.length > 0) {
    coverBrackets(draft, item.brackets);
    readBrackets(source, draft, item.gather(tokens).words, item.brackets);
  }
  return draft;
}

/** The one ingredient that an item names; what is note, percentage and "organic" is taken off the name. */
export function draftOf(source: Source, item: Item): Draft {
  let { words } = item;
  const draft = newDraft('', words[0]!.start, words.at(-1)!.end);
  coverBrackets(draft, item.brackets);
  const noteFrom = noteStart(words);
  if (noteFrom > 0) {
    const note = words.slice(noteFrom);
    addNote(draft, nameOf(source.text, note));
    if (isCondition(note)) draft.presence = 'may-contain';
    let to = noteFrom;
    while (to > 1 && trailJoints.has(words[to - 1]!.text)) to -= 1;
    words = words.slice(0, to);
  }
  words = takePercentage(draft, words);
  const named = words.filter(word => word.text !== 'organic');
  draft.organic = named.length > 0 && named.length < words.length;
  if (draft.organic) words = named;
  draft.name = nameOf(source.text, words);
  readBrackets(source, draft, words, item.brackets);
  return draft;
}

function coverBrackets(draft: Draft, brackets: readonly Bracket[]): void {
  if (brackets.length === 0) return;
  draft.start = Math.min(draft.start, brackets[0]!.start);
  draft.end = Math.max(draft.end, brackets.at(-1)!.end);
}

/** "salt 1.6%" and "1/10 of 1% sodium benzoate" without the percentage; "2% milk" is a name. */
function takePercentage(draft: Draft, words: readonly Token[]): readonly Token[] {
  if (words.length > 2 && words.at(-1)!.kind === 'percent' && words.at(-2)!.kind === 'number') {
    declare(draft, words.at(-2)!.text);
    return words.slice(0, -2);
  }
  const fraction = words[1]?.kind === 'slash' ? percentAt(words, 0) : undefined;
  if (fraction === undefined || !fraction.hasSign || fraction.end === words.length) return words;
  declare(draft, String(fraction.percent));
  return words.slice(fraction.end);
}

function declare(draft: Draft, printed: string): void {
  const percent = parseNumber(printed);
  if (!Number.isFinite(percent) || percent > 100) return;
  draft.declaredPercent = percent;
  draft.declaredDecimals = /[.,](\d+)$/.exec(printed)?.[1]?.length ?? 0;
}

function readBrackets(source: Source, draft: Draft, words: readonly Token[], brackets: readonly Bracket[]): void {
  for (const bracket of brackets) {
    if (listsParts(source.tokens, bracket)) addParts(draft, bracket.drafts);
    else readShortBracket(source, draft, bracket);
  }
  if (draft.parts.length === 0) return;
  const group = groupKind(words);
  if (group !== undefined) {
    draft.kind = 'group';
    draft.outOfOrder = group.outOfOrder;
    if (group.isConditional) draft.presence = 'may-contain';
  }
  const lastPart = draft.parts.at(-1)!;
  if ((lastPart.unordered || lastPart.presence === 'alternative') && isBlendOfAlternatives(draft))
    for (const part of draft.parts) if (part.presence === 'certain') part.presence = 'alternative';
}

/** "(2%)", "(preservative)", "(less than 2%)", "(salt)". */
function readShortBracket({ text, tokens }: Source, draft: Draft, bracket: Bracket): void {
  const inside = insideOf(tokens, bracket);
  if (inside.length === 2 && inside[0]!.kind === 'number' && inside[1]!.kind === 'percent') {
    declare(draft, inside[0]!.text);
    return;
  }
  if (isNote(inside)) {
    const note = noteText(text, inside);
    if (note !== '') addNote(draft, note);
    if (isCondition(inside)) draft.presence = 'may-contain';
  } else if (bracket.drafts.length === 0) {
    const limit = thresholdAt(inside, 0)?.atMostPercent;
    if (limit !== undefined) draft.atMostPercent = limit;
    else if (inside.some(token => token.kind === 'word')) addNote(draft, noteText(text, inside));
  } else if (bracket.drafts.length === 1 && isFunctionName(bracket.drafts[0]!)) {
    const [said] = bracket.drafts as [Draft];
    // "ground pork (no more than 30% fat)": the bound is of what the meat holds, and told whole.
    addNote(draft, said.atMostPercent === undefined ? said.name : noteText(text, inside));
    for (const note of said.notes) addNote(draft, note);
    if (said.presence === 'may-contain') draft.presence = 'may-contain';
  } else addParts(draft, bracket.drafts);
}

/** "(preservative, contains sulfites)": what is left of the bracket names a function only. */
function isFunctionName(draft: Draft): boolean {
  if (draft.parts.length > 0) return false;
  const words = draft.name.toLowerCase().split(/[\s-]+/);
  return words.every(word => functionWords.has(word));
}

/** "vegetable oil (soybean, palm or canola)": the last one's "or" speaks of all. Only in blends of fats and function groups. */
function isBlendOfAlternatives(draft: Draft): boolean {
  return (
    (draft.kind === 'group' && !draft.outOfOrder) || /\b(?:oils?|shortening|fats?|starter|culture|leavening|blend)\b/i.test(draft.name)
  );
}
