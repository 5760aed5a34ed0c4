import { asciiClass, characterClass, classOf, isDamage } from './characters.ts';
import { cutFootnoteDigits, cutGlued } from './gluedWords.ts';
import { addAndOr, addSign } from './signs.ts';
import type { Token, Tokens } from './token.ts';
import { roleOf, wordRole } from './vocabulary.ts';

/**
 * Cuts a statement into tokens in one pass over the text; linear in its length, whatever the text.
 *
 * "SALT, TRI-CALCIUM PHOSPHATE (2%)" gives word salt, comma, word tri (hyphenAfter), word calcium, word phosphate,
 * open, number 2, percent, close. A period or comma between two digits belongs to the number.
 */
export function tokenize(text: string): Tokens {
  const tokens: Token[] = [];
  const lower = lowerCase(text);
  let damaged = false;
  let digitEndings = 0;
  let at = 0;
  while (at < text.length) {
    const code = lower.charCodeAt(at);
    const kind = code < 128 ? asciiClass[code]! : classOf(text.charCodeAt(at), text, at);
    if (kind === characterClass.blank) at += 1;
    else if (kind === characterClass.letter) {
      const start = at;
      at = addWord(tokens, text, lower, start);
      if (at - start > 3 && isDigit(lower, at - 1) && !isDigit(lower, at - 2)) digitEndings += 1;
    } else if (kind === characterClass.digit) at = addNumber(tokens, text, at);
    else {
      const start = at;
      at = addSign(tokens, text, start);
      if (code >= 128) damaged ||= isDamage(text, start, at);
    }
  }
  return { tokens: digitEndings > 1 ? cutFootnoteDigits(tokens) : tokens, damaged };
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}

/** Lowered as a whole, which is quicker than word by word. Only "İ" grows when lowered: without it, offsets fit. */
function lowerCase(text: string): string {
  const lower = text.toLowerCase();
  return lower.length === text.length ? lower : text.replaceAll('İ', 'I').toLowerCase();
}

/** Adds the word that starts at `at` and gives the place behind it. */
function addWord(tokens: Token[], text: string, lower: string, at: number): number {
  let end = at + 1;
  let code = lower.charCodeAt(end);
  // The plain case: letters and digits of ASCII, which is nearly every word. The code behind the text is NaN.
  while (code < 128 && (asciiClass[code] === characterClass.letter || asciiClass[code] === characterClass.digit)) {
    end += 1;
    code = lower.charCodeAt(end);
  }
  const isPlain = !(code >= 128) && code !== 39 && code !== 96 && lower.charCodeAt(at) < 128;
  if (isPlain) return pushWord(tokens, text, lower.slice(at, end), at, end);
  end = wordEnd(text, end, false);
  return pushWord(tokens, text, foldWord(text.slice(at, end)), at, end);
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
  if (word.length === 1 && isIsomerPrefix(tokens, text, start)) {
    tokens.push({ kind: 'word', text: 'd,l', start, end: start + 3, hyphenAfter: true, role: 0 });
    return start + 4;
  }
  if (role !== 0 && (word === 'and' || word === 'or')) {
    const pair = andOr.exec(text.slice(start, start + 9))?.[0];
    if (pair !== undefined) return addAndOr(tokens, start, start + pair.length);
  }
  const after = text.charCodeAt(end);
  const hyphenAfter = after === 45 || after === 0x2010 || after === 0x2011;
  tokens.push({ kind: 'word', text: word, start, end, hyphenAfter, role });
  if (word === 'contain' || word === 'contains' || (after === colon && word.endsWith('contains'))) cutGlued(tokens);
  return hyphenAfter ? end + 1 : end;
}
const colon = 58;

/** "and/or", "and / or", "and or" */
const andOr = /^and\s?(?:\/\s?)?or\b|^or\s?\/\s?and\b/i;

/** "D,L-ALPHA TOCOPHEROL"; in "VITAMIN D,L-CARNITINE" the comma separates. */
function isIsomerPrefix(tokens: readonly Token[], text: string, start: number): boolean {
  const before = tokens.at(-1)?.kind;
  return before !== 'word' && before !== 'number' && /^(?:d,l|l,d)-/i.test(text.slice(start, start + 4));
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
