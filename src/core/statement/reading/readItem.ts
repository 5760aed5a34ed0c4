import { leadJoints, trailJoints } from '#core/statement/text/vocabulary.ts';
import { type Bracket, insideOf } from './bracket.ts';
import { choiceOf, isOr, pairOf } from './choices.ts';
import { addNote, addParts, type Draft, leadWithNote } from './draft.ts';
import { draftOf, type Source } from './draftOf.ts';
import type { Item } from './item.ts';
import { nameOf, noteText } from './nameOf.ts';
import { isCondition, isNote, isNoteItem, leadSentenceLength } from './notes.ts';

export interface ItemReading {
  readonly drafts: readonly Draft[];
  /** The item opened with "or" or "and/or": it and its brothers are alternatives. */
  readonly leadsWithOr: boolean;
  /** The item was a note to the one before ("BHT, to preserve freshness"): where it ends. */
  readonly endOfNote?: number;
}

/**
 * Turns what stands between two separators into ingredients: usually one; two for "salt and pepper" at the end of a
 * list; none for a note that belongs to the ingredient before.
 */
export function readItem(source: Source, item: Item, previous: Draft | undefined, mayEndList: boolean): ItemReading {
  const { words } = item;
  let from = 0;
  let to = words.length;
  let leadsWithOr = false;
  for (; from < to && leadJoints.has(words[from]!.text); from++) leadsWithOr ||= isOr(words[from]!.text);
  while (to > from && trailJoints.has(words[to - 1]!.text)) to -= 1;
  if (from === to) return { drafts: bracketsAlone(source, item.brackets, previous), leadsWithOr };

  const lead = leadSentenceLength(words, from, to);
  const hasLead = lead > 0 && from + lead < to;
  let nameFrom = hasLead ? from + lead : from;
  while (nameFrom < to - 1 && leadJoints.has(words[nameFrom]!.text)) nameFrom += 1;
  const named = partOf(item, nameFrom, to);
  if (previous !== undefined && isNoteItem(named.words) && !headsList(named)) {
    addNoteItem(source, named, previous);
    return { drafts: [], leadsWithOr, endOfNote: previous.end };
  }
  const choice = choiceOf(source, named);
  const drafts = choice !== undefined ? [choice] : (pairOf(source, named, mayEndList) ?? [draftOf(source, named)]);
  if (hasLead) leadWithNote(drafts.at(-1)!, nameOf(source.text, words.slice(from, from + lead)));
  return { drafts, leadsWithOr };
}

function partOf(item: Item, from: number, to: number): Item {
  if (from === 0 && to === item.words.length) return item;
  const brackets = item.brackets.map(bracket => ({ ...bracket, afterWords: Math.max(0, bracket.afterWords - from) }));
  return { words: item.words.slice(from, to), brackets };
}

/** "if lemon (yellow 5)" is a group under a condition, "if colored" a note. */
function headsList(item: Item): boolean {
  return isCondition(item.words) && item.brackets.length > 0;
}

function addNoteItem(source: Source, item: Item, previous: Draft): void {
  addNote(previous, nameOf(source.text, item.words));
  if (isCondition(item.words)) previous.presence = 'may-contain';
  previous.end = Math.max(previous.end, item.words.at(-1)!.end, item.brackets.at(-1)?.end ?? 0);
  for (const bracket of item.brackets) addParts(previous, bracket.drafts);
}

/** A bracket behind a separator: a note to the ingredient before, or ingredients of its own. */
function bracketsAlone(source: Source, brackets: readonly Bracket[], previous: Draft | undefined): Draft[] {
  const drafts: Draft[] = [];
  for (const bracket of brackets) {
    const inside = insideOf(source.tokens, bracket);
    if (previous !== undefined && isNote(inside)) {
      addNote(previous, noteText(source.text, inside));
      if (bracket.end > previous.end) previous.end = bracket.end;
    } else for (const draft of bracket.drafts) drafts.push(draft);
  }
  return drafts;
}
