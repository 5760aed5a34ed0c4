import type { Token } from '#core/statement/text/token.ts';
import { abbreviations } from '#core/statement/text/vocabulary.ts';
import { listsParts } from './bracket.ts';
import { mayContainAt } from './clauses.ts';
import type { Draft } from './draft.ts';
import { footnoteEnd, isFootnote } from './footnotes.ts';
import { headingAt } from './headings.ts';
import { GrowingItem } from './item.ts';
import { Level } from './level.ts';
import type { ReadState } from './readState.ts';
import { readWord } from './readWord.ts';
import { addRemark, allergenRunEnd } from './remarks.ts';

/** No real statement nests deeper than 6; past this, brackets are read as blanks. */
const deepestNesting = 40;

const partnerOf: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}', '<': '>' };

/**
 * Reads the items of one bracket level, or of the whole text. `opened` is the bracket that opened the level.
 * Brackets of all kinds are one stack: a closing bracket of another kind closes the top, a missing one is closed at
 * the end of the text, a lone closing bracket is passed over; each is reported and no text is dropped.
 */
export function readList(state: ReadState, opened: Token | undefined, depth: number): Draft[] {
  const { tokens } = state;
  const level = new Level(state, opened, depth);
  while (state.at < tokens.length) {
    const token = tokens[state.at]!;
    switch (token.kind) {
      case 'comma':
        level.finishItem();
        state.at += 1;
        break;
      case 'semicolon':
        level.finishItem();
        level.closeGroup();
        state.at += 1;
        break;
      case 'period':
        readPeriod(state, level);
        break;
      case 'colon':
        readColon(state, level);
        break;
      case 'mark':
        readMark(state, level);
        break;
      case 'open':
        readBracket(state, level, token);
        break;
      case 'close':
        if (closesLevel(state, level, token)) return level.list;
        break;
      default:
        readWord(state, level, token);
    }
  }
  level.finishItem(true);
  if (opened !== undefined) state.report('bracket-not-closed', opened.start, opened.end, `"${partnerOf[opened.text]}" further on`);
  return level.list;
}

function closesLevel(state: ReadState, level: Level, token: Token): boolean {
  state.at += 1;
  const { opened } = level;
  if (opened === undefined) {
    state.report('bracket-not-opened', token.start, token.end, 'an opening bracket before it');
    return false;
  }
  const partner = partnerOf[opened.text];
  if (partner !== token.text) state.report('bracket-of-another-kind', token.start, token.end, `"${partner}"`);
  level.finishItem(true);
  return true;
}

function readBracket(state: ReadState, level: Level, token: Token): void {
  state.at += 1;
  if (level.depth >= deepestNesting) {
    state.report('nesting-too-deep', token.start, token.end, `at most ${deepestNesting} brackets inside each other`);
    return;
  }
  const from = state.at;
  const drafts = readList(state, token, level.depth + 1);
  const to = state.at;
  const end = state.tokens[to - 1]!.end;
  level.item.addBracket({ drafts, from, to, start: token.start, end, afterWords: level.item.wordCount });
}

/** A period ends a sentence, but for one behind an abbreviation. */
function readPeriod(state: ReadState, level: Level): void {
  if (!isAbbreviated(state.tokens, state.at, level.item)) {
    level.finishItem(true);
    level.closeSentence();
  }
  state.at += 1;
}

function isAbbreviated(tokens: readonly Token[], at: number, item: GrowingItem): boolean {
  const before = tokens[at - 1];
  const after = tokens[at + 1]?.kind;
  if (before?.kind !== 'word' || before.end !== tokens[at]!.start || item.wordCount === 0 || item.lastWord(tokens) !== before) return false;
  if (before.text.length === 1) return after === 'word' || after === 'comma' || after === 'close';
  return abbreviations.has(before.text) && (after === 'word' || after === 'number');
}

/** A colon behind a few words makes them a heading; behind many it only separates. */
function readColon(state: ReadState, level: Level): void {
  state.at += 1;
  const { item } = level;
  const name = item.gather(state.tokens);
  const heading = headingAt(state.text, name);
  if (heading === undefined) {
    level.finishItem();
    return;
  }
  level.item = new GrowingItem();
  if (heading.isOfAllergens && readAllergens(state, item.first)) return;
  if (level.awaitsChoiceName) {
    level.openChoice(name, heading.group !== undefined);
    return;
  }
  if (heading.group !== undefined) level.openGroupInClause({ ...heading, ...heading.group });
  // "INGREDIENTS:" in front of everything is a title; later ones begin another product of a variety pack.
  else if (!heading.isTitle || level.list.length > 0) level.openComponent(heading);
  // "CHEESE (MILK, SALT): WATER" lists in its heading already.
  for (const bracket of name.brackets) if (listsParts(state.tokens, bracket)) for (const draft of bracket.drafts) level.target.push(draft);
}

/** "ALLERGENS: MILK", "ALLERGY WARNING: MAY CONTAIN MILK": the heading, at `from`, is part of the remark. */
function readAllergens(state: ReadState, from: number): boolean {
  const end = allergenRunEnd(state.tokens, state.at);
  if (end === undefined) return false;
  const isWarning = mayContainAt(state.tokens, state.at) !== undefined;
  state.at = from;
  addRemark(state, isWarning ? 'may-contain-allergens' : 'allergens', end);
  return true;
}

/** A footnote mark is no part of a name; the footnote itself is a remark, or a note of the ingredient whose bracket it fills. */
function readMark(state: ReadState, level: Level): void {
  const { tokens } = state;
  state.at += 1;
  if (!isFootnote(tokens, state.at, level.item.wordCount === 0)) return;
  level.finishItem();
  const inBracket = level.depth > 0;
  const end = footnoteEnd(tokens, state.at, inBracket);
  if (inBracket && level.target.length === 0) state.at = end;
  else if (end > state.at) addRemark(state, 'footnote', end);
}
