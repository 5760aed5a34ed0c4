import { asciiClass, characterClass, classOf, isDamage, strangeRunEnd } from './characters.ts';
import { roleOf, wordRole } from './vocabulary.ts';

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

const signs: ReadonlyMap<string, TokenKind> = new Map(
  (
    [
      [',\u2022\u00b7\uff0c', 'comma'],
      [';', 'semicolon'],
      ['.', 'period'],
      [':', 'colon'],
      ['([{', 'open'],
      [')]}>', 'close'],
      ['/', 'slash'],
      ['&', 'ampersand'],
      ['%', 'percent'],
      ['-\u2013\u2014\u2010\u2011', 'dash'],
    ] as const
  ).flatMap(([characters, kind]) => [...characters].map(character => [character, kind] as const)),
);
/** Signs that stand inside items and shape them; the others separate. */
const shapingSigns: ReadonlySet<TokenKind> = new Set(['slash', 'ampersand', 'percent', 'dash', 'less-than']);

const htmlTag = /^<\/?(?:sup|sub|b|i|u|em|strong|br|p|span|div|font|ul|li)\b[^<>]{0,60}>/i;
const htmlEntity = /^&(?:amp|nbsp|lt|gt|quot|apos|reg|trade|#\d{1,6}|#x[0-9a-f]{1,6});/i;
const lineBreakText = '_x000d_';

/**
 * Cuts a statement into tokens in one pass over the text; linear in its length, whatever the text.
 *
 * "SALT, TRI-CALCIUM PHOSPHATE (2%)" gives word salt, comma, word tri (hyphenAfter), word calcium, word phosphate,
 * open, number 2, percent, close. A period or comma between two digits belongs to the number.
 */
export function tokenize(text: string): Tokens {
  const tokens: Token[] = [];
  // Lowered as a whole, which is quicker than word by word; but "İ" grows when lowered, and then offsets do not fit.
  const whole = text.toLowerCase();
  const lower = whole.length === text.length ? whole : undefined;
  let damaged = false;
  let at = 0;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    const kind = code < 128 ? asciiClass[code]! : classOf(code, text, at);
    if (kind === characterClass.blank) at += 1;
    else if (kind === characterClass.letter) at = addWord(tokens, text, lower, at);
    else if (kind === characterClass.digit) at = addNumber(tokens, text, at);
    else {
      const start = at;
      at = addSign(tokens, text, start);
      if (code >= 128) damaged ||= isDamage(text, start, at);
    }
  }
  return { tokens, damaged };
}

/** Adds the word that starts at `at` and gives the place behind it. */
function addWord(tokens: Token[], text: string, lower: string | undefined, at: number): number {
  let end = at + 1;
  let code = text.charCodeAt(end);
  // The plain case: letters and digits of ASCII, which is nearly every word. The code behind the text is NaN.
  while (code < 128 && (asciiClass[code] === characterClass.letter || asciiClass[code] === characterClass.digit)) {
    end += 1;
    code = text.charCodeAt(end);
  }
  let word: string;
  if (code >= 128 || code === 39 || code === 96 || text.charCodeAt(at) >= 128) {
    end = wordEnd(text, end, false);
    word = foldWord(text.slice(at, end));
  } else word = lower === undefined ? text.slice(at, end).toLowerCase() : lower.slice(at, end);
  return pushWord(tokens, text, word, at, end);
}

/** Adds the number, or the word that starts with a digit, at `at` and gives the place behind it. */
function addNumber(tokens: Token[], text: string, at: number): number {
  const end = wordEnd(text, at + 1, true);
  const raw = text.slice(at, end);
  if (!/^[\d.,]+$/.test(raw)) return pushWord(tokens, text, foldWord(raw), at, end);
  tokens.push({ kind: 'number', text: raw, start: at, end, hyphenAfter: text.charCodeAt(end) === 45, role: wordRole.opens });
  return end;
}

function pushWord(tokens: Token[], text: string, word: string, start: number, end: number): number {
  const role = roleOf(word);
  if (role !== 0 && (word === 'and' || word === 'or') && (text[end] === '/' || text[end + 1] === '/')) {
    const pair = /^and\s?\/\s?or\b|^or\s?\/\s?and\b/i.exec(text.slice(start, start + 9))?.[0];
    if (pair !== undefined) return pushAndOr(tokens, start, start + pair.length);
  }
  const hyphen = text.charCodeAt(end);
  const hyphenAfter = hyphen === 45 || hyphen === 0x2010 || hyphen === 0x2011;
  tokens.push({ kind: 'word', text: word, start, end, hyphenAfter, role });
  return hyphenAfter ? end + 1 : end;
}

function pushAndOr(tokens: Token[], start: number, end: number): number {
  tokens.push({ kind: 'word', text: 'and/or', start, end, hyphenAfter: false, role: roleOf('and/or') });
  return end;
}

/** Adds the sign at `at`, or passes over a tag, an entity or the text of a line break; gives the place behind it. */
function addSign(tokens: Token[], text: string, at: number): number {
  const character = text[at]!;
  if (character === '<') return addAngle(tokens, text, at);
  if (character === '_' && text.slice(at, at + 7).toLowerCase() === lineBreakText) return at + 7;
  if (character === '&') {
    const entity = htmlEntity.exec(text.slice(at, at + 12))?.[0];
    if (entity !== undefined) {
      if (entity.toLowerCase() === '&amp;') pushSign(tokens, 'ampersand', '&', at, at + entity.length);
      return at + entity.length;
    }
    const choice = /^&\s?\/\s?or\b/i.exec(text.slice(at, at + 7))?.[0];
    if (choice !== undefined) return pushAndOr(tokens, at, at + choice.length);
  }
  const kind = signs.get(character);
  if (kind !== undefined) return pushSign(tokens, kind, kind === 'dash' ? '-' : character, at, at + 1);
  return pushSign(tokens, 'mark', character, at, text.charCodeAt(at) < 128 ? at + 1 : strangeRunEnd(text, at));
}

/** "<sup>" is passed over, "<2%" is a comparison, any other "<" a bracket. */
function addAngle(tokens: Token[], text: string, at: number): number {
  const tag = htmlTag.exec(text.slice(at, at + 80))?.[0];
  if (tag !== undefined) return at + tag.length;
  const isComparison = /^<\s*=?\s*\d/.test(text.slice(at, at + 8));
  return pushSign(tokens, isComparison ? 'less-than' : 'open', '<', at, at + 1);
}

function pushSign(tokens: Token[], kind: TokenKind, text: string, start: number, end: number): number {
  const opens = kind === 'less-than' ? wordRole.opens : 0;
  const role = shapingSigns.has(kind) ? wordRole.shapes | opens : 0;
  tokens.push({ kind, text, start, end, hyphenAfter: false, role });
  return end;
}

const unitBehindDigits = /^(?:g|mg|mcg|kg|ml|oz|of|or|percent)\b/i;

/** Where a word or number goes on to, from `from`. Apostrophes stay inside a word; "." and "," stay inside a number. */
function wordEnd(text: string, from: number, startsWithDigit: boolean): number {
  let end = from;
  let onlyDigits = startsWithDigit;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    const kind = classOf(code, text, end);
    if (kind === characterClass.letter) {
      // "30g" and "2of" are two words; "500II" is one.
      if (onlyDigits && unitBehindDigits.test(text.slice(end, end + 8))) break;
      onlyDigits = false;
    } else if (kind !== characterClass.digit) {
      const next = end + 1 < text.length ? classOf(text.charCodeAt(end + 1), text, end + 1) : characterClass.other;
      const isApostrophe = code === 39 || code === 0x2019 || code === 0x2018 || code === 0x60;
      const isDecimal = (code === 46 || code === 44) && onlyDigits && next === characterClass.digit;
      if (!isDecimal && !(isApostrophe && next === characterClass.letter)) break;
      if (isApostrophe) onlyDigits = false;
    }
    end += 1;
  }
  return end;
}

/** Lower case, without accents and apostrophes: the form in which words are compared. */
function foldWord(word: string): string {
  return word
    .normalize('NFD')
    .replace(/[\u0300-\u036f'\u2018\u2019`]/g, '')
    .toLowerCase();
}
