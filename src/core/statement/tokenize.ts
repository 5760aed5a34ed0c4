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
}

export interface Tokens {
  readonly tokens: readonly Token[];
  /** True when characters were found that only damaged encodings hold. */
  readonly damaged: boolean;
}

const characterClass = { other: 0, letter: 1, digit: 2, blank: 3 } as const;

const asciiClass = new Uint8Array(128);
for (let code = 0; code < 128; code++) {
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  const isDigit = code >= 48 && code <= 57;
  asciiClass[code] = isLetter
    ? characterClass.letter
    : isDigit
      ? characterClass.digit
      : code <= 32 || code === 127
        ? characterClass.blank
        : characterClass.other;
}

const punctuation: ReadonlyMap<number, TokenKind> = new Map(
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
    ] as const
  ).flatMap(([characters, kind]) => [...characters].map(character => [character.charCodeAt(0), kind] as const)),
);

/**
 * Double-decoded UTF-8 leaves such characters where a dagger, a quote or a trade mark stood. The three lead letters
 * (\u00c2, \u00c3, \u00e2) are also French and Portuguese letters: they count as damage only before one of the others.
 */
const damageFollower =
  /[\u0080-\u00bf\u20ac\u2122\u0152\u0153\u0160\u0161\u017d\u017e\u0178\u0192\u201a-\u201e\u2020-\u2022\u2026\u2030\u02c6\u2039\u203a\ufffd]/;
const damageLead = /[\u00c2\u00c3\u00e2]/;
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
  let damaged = false;
  const length = text.length;
  let at = 0;
  while (at < length) {
    const code = text.charCodeAt(at);
    const kind = classOf(code, text, at);
    if (kind === characterClass.blank) {
      at += 1;
      continue;
    }
    if (kind === characterClass.letter || kind === characterClass.digit) {
      at = pushWord(tokens, text, at, wordEnd(text, at, length, kind === characterClass.digit));
      continue;
    }
    if (code === 95 && text.slice(at, at + 7).toLowerCase() === lineBreakText) {
      at += 7;
      continue;
    }
    const character = text[at]!;
    if (character === '&') {
      const entity = htmlEntity.exec(text.slice(at, at + 12))?.[0];
      if (entity !== undefined) {
        if (entity.toLowerCase() === '&amp;')
          tokens.push({ kind: 'ampersand', text: '&', start: at, end: at + entity.length, hyphenAfter: false });
        at += entity.length;
        continue;
      }
      const choice = /^&\s?\/\s?or\b/i.exec(text.slice(at, at + 7))?.[0];
      if (choice !== undefined) {
        tokens.push({ kind: 'word', text: 'and/or', start: at, end: at + choice.length, hyphenAfter: false });
        at += choice.length;
        continue;
      }
    }
    if (character === '<') {
      const tag = htmlTag.exec(text.slice(at, at + 80))?.[0];
      if (tag !== undefined) {
        at += tag.length;
        continue;
      }
      const comparison = /^<\s*=?\s*\d/.test(text.slice(at, at + 8));
      tokens.push({ kind: comparison ? 'less-than' : 'open', text: '<', start: at, end: at + 1, hyphenAfter: false });
      at += 1;
      continue;
    }
    const known = punctuation.get(code);
    if (known !== undefined) {
      tokens.push({ kind: known, text: character, start: at, end: at + 1, hyphenAfter: false });
      at += 1;
      continue;
    }
    if (character === '-' || character === '\u2013' || character === '\u2014' || character === '\u2010' || character === '\u2011') {
      tokens.push({ kind: 'dash', text: '-', start: at, end: at + 1, hyphenAfter: false });
      at += 1;
      continue;
    }
    let end = at + 1;
    if (code >= 128) {
      while (end < length && text.charCodeAt(end) >= 128 && classOf(text.charCodeAt(end), text, end) === characterClass.other) end += 1;
      if (character === '\ufffd' || (damageLead.test(character) && end - at > 1)) damaged = true;
    }
    tokens.push({ kind: 'mark', text: character, start: at, end, hyphenAfter: false });
    at = end;
  }
  return { tokens, damaged };
}

function classOf(code: number, text: string, at: number): number {
  if (code < 128) return asciiClass[code]!;
  if (
    code === 0xa0 ||
    code === 0x2009 ||
    code === 0x202f ||
    code === 0x3000 ||
    code === 0x200b ||
    code === 0xfeff ||
    code === 0x2028 ||
    code === 0x2029
  )
    return characterClass.blank;
  if (code === 0xbd || code === 0xbc || code === 0xbe) return characterClass.other;
  const character = text[at]!;
  if (damageFollower.test(character)) return characterClass.other;
  if (damageLead.test(character) && (damageFollower.test(text[at + 1] ?? '') || damageFollower.test(text[at - 1] ?? '')))
    return characterClass.other;
  return /\p{L}/u.test(character) ? characterClass.letter : characterClass.other;
}

/** The end of a word or number that starts at `at`. Apostrophes stay inside a word; "." and "," stay inside a number. */
function wordEnd(text: string, at: number, length: number, startsWithDigit: boolean): number {
  let end = at + 1;
  // The plain case first: letters and digits of ASCII, which is nearly every word.
  if (!startsWithDigit) {
    while (end < length) {
      const code = text.charCodeAt(end);
      if (code >= 128) break;
      const kind = asciiClass[code]!;
      if (kind !== characterClass.letter && kind !== characterClass.digit) break;
      end += 1;
    }
    if (end === length) return end;
    const code = text.charCodeAt(end);
    if (code < 128 && code !== 39 && code !== 96) return end;
  }
  let onlyDigits = startsWithDigit;
  while (end < length) {
    const code = text.charCodeAt(end);
    const kind = classOf(code, text, end);
    if (kind === characterClass.letter) {
      if (
        onlyDigits &&
        end > at &&
        (code | 32) !== 105 &&
        (code | 32) !== 118 &&
        /^(?:g|mg|mcg|kg|ml|oz|of|or|percent)\b/i.test(text.slice(end, end + 8))
      )
        break;
      onlyDigits = false;
    } else if (kind === characterClass.digit) {
      // digits go on in numbers and in words alike: B12, E330
    } else if (
      (code === 39 || code === 0x2019 || code === 0x2018 || code === 0x60) &&
      end + 1 < length &&
      classOf(text.charCodeAt(end + 1), text, end + 1) === characterClass.letter
    ) {
      onlyDigits = false;
    } else if (
      (code === 46 || code === 44) &&
      onlyDigits &&
      end + 1 < length &&
      asciiClass[text.charCodeAt(end + 1)] === characterClass.digit
    ) {
      // 0,5 and 1.60 and 2,000 are numbers
    } else break;
    end += 1;
  }
  return end;
}

function pushWord(tokens: Token[], text: string, start: number, wordStop: number): number {
  let end = wordStop;
  const raw = text.slice(start, end);
  const startsWithDigit = asciiClass[text.charCodeAt(start)] === characterClass.digit;
  if (startsWithDigit && /^[\d.,]+$/.test(raw)) {
    tokens.push({ kind: 'number', text: raw, start, end, hyphenAfter: text.charCodeAt(end) === 45 });
    return end;
  }
  const folded = foldWord(raw);
  if ((folded === 'and' || folded === 'or') && (text[end] === '/' || text[end + 1] === '/')) {
    const pair = /^and\s?\/\s?or\b|^or\s?\/\s?and\b/i.exec(text.slice(start, start + 9));
    if (pair !== null) {
      end = start + pair[0].length;
      tokens.push({ kind: 'word', text: 'and/or', start, end, hyphenAfter: false });
      return end;
    }
  }
  const hyphen = text.charCodeAt(end);
  const hyphenAfter = hyphen === 45 || hyphen === 0x2010 || hyphen === 0x2011;
  tokens.push({ kind: 'word', text: folded, start, end, hyphenAfter });
  return hyphenAfter ? end + 1 : end;
}

/** Lower case, without accents and apostrophes: the form in which words are compared. */
export function foldWord(word: string): string {
  for (let index = 0; index < word.length; index++) {
    const code = word.charCodeAt(index);
    if (code >= 128 || code === 39 || code === 96) return unmarked(word);
  }
  return word.toLowerCase();
}

function unmarked(word: string): string {
  return word
    .normalize('NFD')
    .replace(/[\u0300-\u036f'\u2018\u2019`]/g, '')
    .toLowerCase();
}

/**
 * A function from UTF-16 offsets to code point positions. For a text without surrogate pairs, which is nearly every
 * statement, it is the identity.
 */
export function codePointPositions(text: string): (offset: number) => number {
  if (!/[\ud800-\udbff][\udc00-\udfff]/.test(text)) return offset => offset;
  const positions = new Uint32Array(text.length + 1);
  let position = 0;
  for (let offset = 0; offset < text.length; offset++) {
    positions[offset] = position;
    const code = text.charCodeAt(offset);
    const next = text.charCodeAt(offset + 1);
    const opensPair = code >= 0xd800 && code <= 0xdbff && next >= 0xdc00 && next <= 0xdfff;
    if (opensPair) {
      positions[offset + 1] = position;
      offset += 1;
    }
    position += 1;
  }
  positions[text.length] = position;
  return offset => positions[offset] ?? position;
}
