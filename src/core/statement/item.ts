import type { Bracket } from './bracket.ts';
import type { Token } from './tokenize.ts';
import { continuesAfterBracket, wordRole } from './vocabulary.ts';

/** The words and brackets between two separators. */
export interface Item {
  readonly words: readonly Token[];
  readonly brackets: readonly Bracket[];
  /**
   * No word of it does more than name something, and all stand a blank or a hyphen apart: its name is a slice of the
   * text and it needs no further reading. So are most.
   */
  readonly isPlain: boolean;
}

const noBrackets: readonly Bracket[] = [];

/** An item that words and brackets are added to as they are read. */
export class GrowingItem implements Item {
  readonly words: Token[] = [];
  brackets: readonly Bracket[] = noBrackets;
  isPlain = true;

  get isEmpty(): boolean {
    return this.words.length === 0 && this.brackets.length === 0;
  }

  addWord(word: Token, text: string): void {
    const { words } = this;
    if (this.isPlain) {
      const last = words.length > 0 ? words[words.length - 1]! : undefined;
      this.isPlain = (word.role & wordRole.shapes) === 0 && (last === undefined || standsBeside(text, last.end, word.start));
    }
    words.push(word);
  }

  addBracket(bracket: Bracket): void {
    if (this.brackets === noBrackets) this.brackets = [bracket];
    else (this.brackets as Bracket[]).push(bracket);
  }

  /** True when a bracket with parts has been closed and this word begins another ingredient without a separator. */
  isEndedBy(token: Token): boolean {
    if (this.brackets.length === 0 || this.words.length === 0) return false;
    const last = this.brackets.at(-1)!;
    if (last.afterWords !== this.words.length || last.drafts.length < 2) return false;
    return token.kind === 'word' && !continuesAfterBracket.has(token.text);
  }
}

const blank = 32;
const hyphen = 45;
function standsBeside(text: string, end: number, start: number): boolean {
  if (start === end) return true;
  if (start !== end + 1) return false;
  const between = text.charCodeAt(end);
  return between === blank || between === hyphen;
}
