import type { Token } from './token.ts';
import { allergenNames, roleOf } from './vocabulary.ts';

/** Cuts the last token in two where a line was lost before an allergen line: "PEPPERCONTAINS: MILK", "SOYMAY CONTAIN WHEAT". */
export function cutGlued(tokens: Token[]): void {
  const last = tokens.at(-1)!;
  const before = tokens.at(-2);
  if (last.text.length > 'contains'.length && last.text.endsWith('contains')) {
    cut(tokens, tokens.length - 1, last.text.length - 'contains'.length);
  } else if (before?.kind === 'word' && before.text.endsWith('may') && allergenNames.has(before.text.slice(0, -3))) {
    cut(tokens, tokens.length - 2, before.text.length - 3);
  }
}

/** Makes two tokens of one behind so many letters. */
function cut(tokens: Token[], index: number, letters: number): void {
  const token = tokens[index]!;
  const middle = token.end - (token.text.length - letters);
  const head = token.text.slice(0, letters);
  const tail = token.text.slice(letters);
  tokens.splice(
    index,
    1,
    { ...token, text: head, end: middle, hyphenAfter: false, role: roleOf(head) },
    { ...token, text: tail, start: middle, role: roleOf(tail) },
  );
}

/**
 * Footnote digits that stand on words: "TOFU1 (WATER, SOYBEANS1)" with "1ORGANIC" at the end. A digit is taken for a mark
 * when it ends two different words of three letters or more, so that "B12", "D3" and "OMEGA3" stay names.
 */
export function cutFootnoteDigits(tokens: Token[]): Token[] {
  const wordsByDigit = new Map<string, Set<string>>();
  for (const { kind, text } of tokens) {
    if (kind !== 'word' || !digitBehind.test(text)) continue;
    const digit = text.at(-1)!;
    wordsByDigit.set(digit, (wordsByDigit.get(digit) ?? new Set()).add(text));
  }
  const isMark = (digit: string): boolean => (wordsByDigit.get(digit)?.size ?? 0) > 1;
  return tokens.flatMap(token => {
    const { kind, text, start, end } = token;
    if (kind !== 'word' || end - start !== text.length) return [token];
    if (digitBehind.test(text) && isMark(text.at(-1)!)) {
      const word = text.slice(0, -1);
      return [{ ...token, text: word, end: end - 1, role: roleOf(word), hyphenAfter: false }, mark(text.at(-1)!, end - 1)];
    }
    if (digitBefore.test(text) && isMark(text[0]!)) {
      const word = text.slice(1);
      return [mark(text[0]!, start), { ...token, text: word, start: start + 1, role: roleOf(word) }];
    }
    return [token];
  });
}
const digitBehind = /^[a-z]{3,}[1-9]$/;
const digitBefore = /^[1-9][a-z]{3,}$/;

function mark(text: string, start: number): Token {
  return { kind: 'mark', text, start, end: start + 1, hyphenAfter: false, role: 0 };
}
