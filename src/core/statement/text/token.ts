/** What a piece of a statement is. Brackets of all kinds are one pair of kinds: real statements mix them freely. */
export type TokenKind =
  | 'word'
  | 'number'
  | 'percent'
  | 'comma'
  | 'semicolon'
  | 'period'
  | 'colon'
  | 'open'
  | 'close'
  | 'slash'
  | 'ampersand'
  | 'less-than'
  | 'dash'
  /** Footnote marks, quotation marks, registered signs, damaged characters: never part of a name. */
  | 'mark';

/** Offsets are UTF-16 units of the text; `codePointPositions` turns them into code points at the edge. */
export interface Token {
  readonly kind: TokenKind;
  /** Words in lower case without accents and apostrophes; "and/or" is one word. Brackets as "(", "[", "{", "<" and their partners. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** The word goes on after a hyphen: "tri-" in "tri-calcium" and in "tri- and dicalcium". */
  readonly hyphenAfter: boolean;
  /** What it may do beside naming something: bits of `wordRole`. */
  readonly role: number;
}

export interface Tokens {
  readonly tokens: readonly Token[];
  /** True when characters were found that only damaged encodings hold. */
  readonly damaged: boolean;
}
