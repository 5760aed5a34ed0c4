import type { Token } from '#core/statement/text/token.ts';
import { continuesAfterBracket, wordRole } from '#core/statement/text/vocabulary.ts';
import type { Bracket } from './bracket.ts';

/** The words and brackets between two separators. */
export interface Item {
  readonly words: readonly Token[];
  readonly brackets: readonly Bracket[];
}

const noBrackets: readonly Bracket[] = [];

/**
 * An item while it is read: the place of its first and last word among the tokens, and its brackets. Most items are
 * plain, and their words are never gathered.
 */
export class GrowingItem {
  wordCount = 0;
  /** Its first word among the tokens of the statement. */
  first = 0;
  brackets: readonly Bracket[] = noBrackets;
  /**
   * No word of it does more than name something, and all stand a blank or a hyphen apart: its name is a slice of the
   * text and it needs no further reading.
   */
  isPlain = true;
  private last = 0;

  get isEmpty(): boolean {
    return this.wordCount === 0 && this.brackets.length === 0;
  }

  addWord(text: string, tokens: readonly Token[], at: number): void {
    const word = tokens[at]!;
    if (this.wordCount === 0) this.first = at;
    if (this.isPlain) {
      const isShaping = (word.role & wordRole.shapes) !== 0;
      this.isPlain = !isShaping && (this.wordCount === 0 || standsBeside(text, tokens[this.last]!.end, word.start));
    }
    this.wordCount += 1;
    this.last = at;
  }

  addBracket(bracket: Bracket): void {
    if (this.brackets === noBrackets) this.brackets = [bracket];
    else (this.brackets as Bracket[]).push(bracket);
  }

  firstWord(tokens: readonly Token[]): Token {
    return tokens[this.first]!;
  }

  lastWord(tokens: readonly Token[]): Token {
    return tokens[this.last]!;
  }

  /** The item with its words gathered: what stands from the first to the last, but for brackets, marks and periods. */
  gather(tokens: readonly Token[]): Item {
    const { brackets, first, last, wordCount } = this;
    if (wordCount === 0) return { words: [], brackets };
    // A plain item has nothing between its words.
    if (this.isPlain) return { words: tokens.slice(first, last + 1), brackets };
    const words: Token[] = [];
    let bracket = 0;
    for (let at = first; at <= last; at++) {
      while (bracket < brackets.length && brackets[bracket]!.to <= at) bracket += 1;
      const isInside = bracket < brackets.length && brackets[bracket]!.from <= at;
      if (!isInside && isNamePart(tokens[at]!)) words.push(tokens[at]!);
    }
    return { words, brackets };
  }

  /** True when a bracket with parts has been closed and this word begins another ingredient without a separator. */
  isEndedBy(token: Token): boolean {
    if (this.brackets.length === 0 || this.wordCount === 0) return false;
    const last = this.brackets.at(-1)!;
    if (last.afterWords !== this.wordCount || last.drafts.length < 2) return false;
    return token.kind === 'word' && !continuesAfterBracket.has(token.text);
  }
}

/** Words, numbers and the signs inside names; not separators, brackets and marks. */
function isNamePart({ kind, role }: Token): boolean {
  return kind === 'word' || kind === 'number' || (role & wordRole.shapes) !== 0;
}

const blank = 32;
const hyphen = 45;
function standsBeside(text: string, end: number, start: number): boolean {
  if (start === end) return true;
  if (start !== end + 1) return false;
  const between = text.charCodeAt(end);
  return between === blank || between === hyphen;
}
