import { allergenRunEnd, claimEnd, facilityEnd, mayContainAt, oneOrMoreAt, sentenceEnd, solutionAt, thresholdAt } from './clauses.ts';
import { type Draft, newDraft } from './draft.ts';
import { headingAt } from './headings.ts';
import { nameOf } from './nameOf.ts';
import { type Bracket, type Item, readItem } from './readItem.ts';
import type { Presence, Remark, StatementIssueCode } from './statement.ts';
import type { Token } from './tokenize.ts';
import { abbreviations, processHeads } from './vocabulary.ts';

export interface ReadState {
  readonly text: string;
  readonly tokens: readonly Token[];
  at: number;
  readonly remarks: Remark[];
  readonly report: (code: StatementIssueCode, start: number, end: number, expected: string) => void;
}

/** No real statement nests deeper than 6; past this, brackets are read as blanks. */
const deepestNesting = 40;
/** The law allows these and no others: 21 CFR 101.4(a)(2). */
const allowedThresholds = new Set([2, 1.5, 1, 0.5]);

const partnerOf: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}', '<': '>' };

/** Words after a closing bracket that go on with the same ingredient: "cocoa (processed with alkali) powder". */
const continuesAfterBracket = new Set([
  'powder',
  'mix',
  'blend',
  'flavor',
  'flavored',
  'color',
  'with',
  'from',
  'for',
  'to',
  'as',
  'added',
  'in',
  'concentrate',
  'puree',
  'juice',
  'oil',
  'oils',
  'solids',
  'extract',
  'syrup',
  'and',
  'or',
  'and/or',
  'phosphate',
  'phosphates',
  'flour',
  'protein',
  'starch',
  'milk',
  'cheese',
  'sauce',
  'used',
  'seasoning',
  'acid',
  'by',
  'solution',
  'lactate',
  'pyrophosphate',
]);

/**
 * Reads the items of one bracket level, or of the whole text. `opened` is the bracket that opened the level.
 * Brackets of all kinds are one stack: a closing bracket of another kind closes the top, a missing one is closed at
 * the end of the text, a lone closing bracket is passed over; each is reported and no text is dropped.
 */
export function readList(state: ReadState, opened: Token | undefined, depth: number): Draft[] {
  const { tokens } = state;
  const list: Draft[] = [];
  let component: Draft | undefined;
  let group: Draft | undefined;
  let groupTakesOne = false;
  let threshold: number | undefined;
  let presence: Presence = 'certain';
  let item: Item = { words: [], brackets: [], marks: 0 };

  const target = (): Draft[] => group?.parts ?? component?.parts ?? list;
  const growTo = (end: number): void => {
    if (group !== undefined && end > group.end) group.end = end;
    if (component !== undefined && end > component.end) component.end = end;
  };

  const finish = (endsSentence: boolean, endsList: boolean): void => {
    const current = item;
    item = { words: [], brackets: [], marks: 0 };
    if (current.words.length === 0 && current.brackets.length === 0) {
      if (endsSentence) closeSentence();
      return;
    }
    const into = target();
    const read = readItem(state.text, current, into.at(-1), (endsList || endsSentence) && into.length > 0);
    for (const draft of read.drafts) {
      if (threshold !== undefined && draft.atMostPercent === undefined) draft.atMostPercent = threshold;
      if (presence !== 'certain') draft.presence = presence;
      into.push(draft);
      growTo(draft.end);
    }
    if (read.endOfNote !== undefined) growTo(read.endOfNote);
    // "(a, b, and/or c)": all of a bracket are alternatives; in the main list only the two that "or" joins.
    if (read.leadsWithOr && presence === 'certain')
      for (const draft of into.slice(depth > 0 ? 0 : -2)) if (draft.presence === 'certain') draft.presence = 'alternative';
    if (group !== undefined && groupTakesOne && read.drafts.length > 0) group = undefined;
    if (endsSentence) closeSentence();
  };
  const closeSentence = (): void => {
    if (presence === 'may-contain' || presence === 'alternative') presence = 'certain';
    group = undefined;
  };
  const remark = (kind: Remark['kind'], from: number, to: number): void => {
    const first = tokens[from]!;
    const last = tokens[to - 1]!;
    state.remarks.push({ kind, text: state.text.slice(first.start, last.end), start: first.start, end: last.end });
    state.at = to;
  };

  const isWholeBracket = (end: number): boolean => {
    const after = tokens[end]?.kind === 'period' ? tokens[end + 1] : tokens[end];
    return opened !== undefined && tokens[state.at - 1] === opened && (after === undefined || after.kind === 'close');
  };

  while (state.at < tokens.length) {
    const token = tokens[state.at]!;
    switch (token.kind) {
      case 'close': {
        if (opened === undefined) {
          state.report('bracket-not-opened', token.start, token.end, 'an opening bracket before it');
          state.at += 1;
          continue;
        }
        if (partnerOf[opened.text] !== token.text) {
          state.report('bracket-of-another-kind', token.start, token.end, `"${partnerOf[opened.text]}"`);
        }
        state.at += 1;
        finish(false, true);
        return list;
      }
      case 'comma':
        finish(false, false);
        state.at += 1;
        continue;
      case 'semicolon':
        finish(false, false);
        group = undefined;
        state.at += 1;
        continue;
      case 'period': {
        if (isAbbreviation(tokens, state.at, item)) {
          state.at += 1;
          continue;
        }
        finish(true, state.at + 1 >= tokens.length);
        state.at += 1;
        continue;
      }
      case 'open': {
        if (depth >= deepestNesting) {
          state.report('nesting-too-deep', token.start, token.end, `at most ${deepestNesting} brackets inside each other`);
          state.at += 1;
          continue;
        }
        const from = state.at + 1;
        state.at = from;
        const drafts = readList(state, token, depth + 1);
        const end = tokens[state.at - 1]!.end;
        const bracket: Bracket = { drafts, tokens: tokens.slice(from, state.at), start: token.start, end, afterWords: item.words.length };
        item.brackets.push(bracket);
        continue;
      }
      case 'colon': {
        state.at += 1;
        const heading = headingAt(state.text, item);
        if (heading === undefined) {
          finish(false, false);
          continue;
        }
        item = { words: [], brackets: [], marks: 0 };
        if (heading.kind === 'group') {
          group = newDraft(heading.name, heading.start, heading.end);
          group.kind = 'group';
          if (threshold !== undefined) group.atMostPercent = threshold;
          group.presence = presence;
          (component?.parts ?? list).push(group);
          growTo(group.end);
          group.outOfOrder = heading.outOfOrder;
          groupTakesOne = heading.takesOne;
          continue;
        }
        // "INGREDIENTS:" in front of everything is a title; later ones begin another product of a variety pack.
        if (heading.kind === 'list-of-ingredients' && list.length === 0) continue;
        component = newDraft(heading.name, heading.start, heading.end);
        component.kind = 'component';
        list.push(component);
        group = undefined;
        threshold = undefined;
        presence = 'certain';
        continue;
      }
      case 'mark': {
        state.at += 1;
        if (isFootnote(tokens, state.at, item)) {
          finish(false, false);
          const end = footnoteEnd(tokens, state.at, depth);
          // A bracket that holds nothing else keeps it as a note of its ingredient.
          if (depth > 0 && target().length === 0) state.at = end;
          else if (end > state.at) remark('footnote', state.at, end);
        } else item.marks += 1;
        continue;
      }
      default: {
        if (token.kind === 'word' || token.kind === 'less-than' || token.kind === 'number') {
          if (startsClause(token)) {
            const clause = thresholdAt(tokens, state.at);
            if (clause !== undefined) {
              finish(false, false);
              if (clause.damaged)
                state.report('threshold-damaged', token.start, tokens[clause.end - 1]!.end, 'a percentage such as "2% or less of"');
              if (!allowedThresholds.has(clause.atMostPercent)) {
                state.report(
                  'threshold-not-allowed',
                  token.start,
                  tokens[clause.end - 1]!.end,
                  '2, 1.5, 1 or 0.5 percent (21 CFR 101.4(a)(2))',
                );
              }
              state.at = clause.end;
              if (clauseStandsAlone(tokens, clause.end)) limitLast(target(), clause.atMostPercent, list);
              else {
                threshold = clause.atMostPercent;
                group = undefined;
              }
              const choice = oneOrMoreAt(tokens, state.at);
              if (choice !== undefined) {
                state.at = choice;
                presence = 'alternative';
              }
              continue;
            }
            const solution = solutionAt(tokens, state.at);
            if (solution !== undefined) {
              finish(false, false);
              group = newDraft(`up to ${solution.percent}% of a solution`, token.start, tokens[solution.end - 1]!.end);
              group.kind = 'group';
              group.solutionPercent = solution.percent;
              groupTakesOne = false;
              (component?.parts ?? list).push(group);
              growTo(group.end);
              state.at = solution.end;
              continue;
            }
            const choice = oneOrMoreAt(tokens, state.at);
            if (choice !== undefined) {
              finish(false, false);
              state.at = choice;
              presence = 'alternative';
              continue;
            }
            const optional = mayContainAt(tokens, state.at);
            if (optional !== undefined) {
              finish(false, false);
              const allergens = allergenRunEnd(tokens, optional);
              if (allergens !== undefined) remark('may-contain-allergens', state.at, allergens);
              else {
                state.at = optional;
                presence = 'may-contain';
                group = undefined;
              }
              continue;
            }
            if (token.text === 'contains' || token.text === 'contain') {
              const from = tokens[state.at + 1]?.kind === 'colon' ? state.at + 2 : state.at + 1;
              const allergens = allergenRunEnd(tokens, from);
              if (allergens !== undefined) {
                const isNote = isWholeBracket(allergens);
                finish(false, depth === 0);
                if (isNote) state.at = allergens;
                else remark('allergens', state.at, allergens);
                continue;
              }
              if (item.words.length === 0 && claimEnd(tokens, state.at) === undefined) {
                state.at = from;
                continue;
              }
            }
          }
          const process = processLeadAt(tokens, state.at, item);
          if (process !== undefined) {
            finish(false, false);
            group = newDraft(nameOf(state.text, tokens.slice(state.at, state.at + 2)), token.start, tokens[process - 1]!.end);
            group.kind = 'group';
            group.outOfOrder = true;
            group.presence = presence;
            if (threshold !== undefined) group.atMostPercent = threshold;
            // "glazed with (honey, salt)" ends with its bracket, "glazed with honey, salt." with its sentence.
            groupTakesOne = tokens[process]!.kind === 'open';
            (component?.parts ?? list).push(group);
            growTo(group.end);
            state.at = process;
            continue;
          }
          if (item.words.length === 0) {
            const claim = claimEnd(tokens, state.at);
            if (claim !== undefined && claim > state.at) {
              // "(not from milk)" as a whole bracket is a note of its ingredient, kept there.
              if (isWholeBracket(claim)) state.at = claim;
              else remark('claim', state.at, claim);
              continue;
            }
            const facility = facilityEnd(tokens, state.at);
            if (facility !== undefined) {
              remark('facility', state.at, facility);
              continue;
            }
          }
        }
        if (closesItem(item, token)) {
          state.report('separator-missing', token.start, token.end, 'a comma before it');
          finish(false, false);
        }
        item.words.push(token);
        state.at += 1;
      }
    }
  }
  finish(true, true);
  if (opened !== undefined) state.report('bracket-not-closed', opened.start, opened.end, `"${partnerOf[opened.text]}" further on`);
  return list;
}

const clauseStarters = new Set([
  'contains',
  'contain',
  'containing',
  'less',
  'not',
  'no',
  'and',
  'also',
  'may',
  'can',
  'one',
  'two',
  'with',
  'any',
  'at',
  'plus',
  'each',
  'under',
  'enhanced',
  'injected',
  'marinated',
  'up',
  'half',
]);

function startsClause(token: Token): boolean {
  return token.kind !== 'word' || clauseStarters.has(token.text);
}

/** "SALT (LESS THAN 2%)", "salt less than 2%.": nothing follows the clause, so it speaks of what stands before it. */
function clauseStandsAlone(tokens: readonly Token[], end: number): boolean {
  const next = tokens[end];
  return (
    next === undefined ||
    next.kind === 'close' ||
    next.kind === 'period' ||
    (next.kind === 'comma' && tokens[end - 1]?.kind !== 'colon' && tokens[end - 1]?.text !== 'of' && tokens[end - 1]?.text !== 'following')
  );
}

function limitLast(target: Draft[], percent: number, list: Draft[]): void {
  const last = target.at(-1) ?? list.at(-1);
  if (last !== undefined && last.atMostPercent === undefined) last.atMostPercent = percent;
}

function isAbbreviation(tokens: readonly Token[], at: number, item: Item): boolean {
  const before = tokens[at - 1];
  const after = tokens[at + 1];
  if (before === undefined || after === undefined || item.words.at(-1) !== before) return false;
  if (before.kind !== 'word' || before.end !== tokens[at]!.start) return false;
  if (before.text.length === 1) return after.kind === 'word' || after.kind === 'comma' || after.kind === 'close';
  return (
    abbreviations.has(before.text) && (after.kind === 'word' || after.kind === 'number') && before.text !== 'b' && before.text !== 'salt'
  );
}

/** A footnote runs to the end of its sentence, and never out of its bracket. */
function footnoteEnd(tokens: readonly Token[], at: number, depth: number): number {
  const end = sentenceEnd(tokens, at);
  if (depth === 0) return end;
  let i = at;
  while (i < end && tokens[i]!.kind !== 'close') i += 1;
  return i;
}

const footnoteWords = new Set([
  'organic',
  'certified',
  'fair',
  'adds',
  'trivial',
  'negligible',
  'dietarily',
  'not',
  'contributes',
  'ingredient',
  'ingredients',
  'source',
  'daily',
  'non',
  'naturally',
  'rainforest',
  'rain',
  'indicates',
  'denotes',
  'sustainably',
  'cage',
  'an',
  'a',
]);

function isFootnote(tokens: readonly Token[], at: number, item: Item): boolean {
  let before = at - 2;
  while (before >= 0 && tokens[before]!.kind === 'mark') before -= 1;
  const previous = tokens[at - 2];
  const next = tokens[at];
  if (next?.kind !== 'word' || before < 0) return false;
  if (!footnoteWords.has(next.text)) return false;
  const startsSentence =
    previous === undefined ||
    previous.kind === 'period' ||
    previous.kind === 'mark' ||
    previous.kind === 'close' ||
    item.words.length === 0;
  if (next.text === 'organic' || next.text === 'an' || next.text === 'a' || next.text === 'non') {
    // "*ORGANIC" ends a list; "*ORGANIC OATS, …" is an ingredient with a mark before its name.
    const end = sentenceEnd(tokens, at);
    const tail = tokens.slice(at, Math.min(end, at + 6));
    const isTail = end - at <= 6 && !tail.some(token => token.kind === 'comma' || token.kind === 'open');
    return startsSentence && isTail && (end >= tokens.length - 1 || tokens[end + 1]?.kind === 'mark' || end - at <= 3);
  }
  return startsSentence || next.text !== 'not';
}

/**
 * "COOKED IN VEGETABLE OIL", "TOPPED WITH SESAME SEEDS": a treatment heads its list without a colon. Inside an item
 * only a cure is taken so, since "cheese made with skim milk" is a name.
 */
function processLeadAt(tokens: readonly Token[], at: number, item: Item): number | undefined {
  const verb = tokens[at]!;
  const joint = tokens[at + 1]?.text;
  if (verb.kind !== 'word' || !processHeads.has(verb.text) || (joint !== 'with' && joint !== 'in' && joint !== 'from')) return undefined;
  if (item.words.length > 0 && verb.text !== 'cured') return undefined;
  const end = tokens[at + 2]?.kind === 'colon' ? at + 3 : at + 2;
  return tokens[end]?.kind === 'word' || tokens[end]?.kind === 'open' ? end : undefined;
}

/** True when a bracket with parts has been closed and this word begins another ingredient without a separator. */
function closesItem(item: Item, token: Token): boolean {
  const last = item.brackets.at(-1);
  if (last === undefined || last.afterWords !== item.words.length || item.words.length === 0) return false;
  if (token.kind !== 'word' || continuesAfterBracket.has(token.text)) return false;
  return last.drafts.length > 1;
}
