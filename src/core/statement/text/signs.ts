import { strangeRunEnd } from './characters.ts';
import type { Token, TokenKind } from './token.ts';
import { roleOf, wordRole } from './vocabulary.ts';

interface Sign {
  readonly kind: TokenKind;
  readonly text: string;
  readonly role: number;
}

/** The signs by their code. Those that separate have no role; the others shape the item they stand in. */
const signs: ReadonlyMap<number, Sign> = new Map(
  (
    [
      [',\u2022\u00b7\uff0c', 'comma', 0],
      [';', 'semicolon', 0],
      ['.', 'period', 0],
      [':', 'colon', 0],
      ['([{', 'open', 0],
      [')]}>', 'close', 0],
      ['/', 'slash', wordRole.shapes],
      ['&', 'ampersand', wordRole.shapes],
      ['%', 'percent', wordRole.shapes],
      ['-\u2013\u2014\u2010\u2011', 'dash', wordRole.shapes],
    ] as const
  ).flatMap(([characters, kind, role]) =>
    [...characters].map(text => [text.charCodeAt(0), { kind, text: kind === 'dash' ? '-' : text, role }] as const),
  ),
);
const ampersand = 38;
const less = 60;
const underscore = 95;

const htmlTag = /^<\/?(?:sup|sub|b|i|u|em|strong|br|p|span|div|font|ul|li)\b[^<>]{0,60}>/i;
const htmlEntity = /^&(?:amp|nbsp|lt|gt|quot|apos|reg|trade|#\d{1,6}|#x[0-9a-f]{1,6});/i;
const lineBreakText = '_x000d_';

/** Adds the sign at `at`, or passes over a tag, an entity or the text of a line break; gives the place behind it. */
export function addSign(tokens: Token[], text: string, at: number): number {
  const code = text.charCodeAt(at);
  const sign = signs.get(code);
  if (sign !== undefined && code !== ampersand) return pushSign(tokens, sign.kind, sign.text, at, at + 1, sign.role);
  if (sign !== undefined) return addAmpersand(tokens, text, at, sign);
  if (code === less) return addAngle(tokens, text, at);
  if (code === underscore && text.slice(at, at + 7).toLowerCase() === lineBreakText) return at + 7;
  return pushSign(tokens, 'mark', text[at]!, at, code < 128 ? at + 1 : strangeRunEnd(text, at), 0);
}

/** "&amp;" and "&" are one sign, "&/or" a word; other entities are passed over. */
function addAmpersand(tokens: Token[], text: string, at: number, { kind, role }: Sign): number {
  const entity = htmlEntity.exec(text.slice(at, at + 12))?.[0];
  if (entity !== undefined && entity.toLowerCase() !== '&amp;') return at + entity.length;
  const choice = entity === undefined ? /^&\s?\/\s?or\b/i.exec(text.slice(at, at + 7))?.[0] : undefined;
  if (choice !== undefined) return addAndOr(tokens, at, at + choice.length);
  return pushSign(tokens, kind, '&', at, at + (entity?.length ?? 1), role);
}

/** "<sup>" is passed over, "<2%" and "<=2%" are comparisons, any other "<" a bracket. */
function addAngle(tokens: Token[], text: string, at: number): number {
  const tag = htmlTag.exec(text.slice(at, at + 80))?.[0];
  if (tag !== undefined) return at + tag.length;
  const comparison = /^<\s*=?(?=\s*\d)/.exec(text.slice(at, at + 8))?.[0];
  if (comparison !== undefined) return pushSign(tokens, 'less-than', '<', at, at + comparison.length, wordRole.shapes | wordRole.opens);
  return pushSign(tokens, 'open', '<', at, at + 1, 0);
}

function pushSign(tokens: Token[], kind: TokenKind, text: string, start: number, end: number, role: number): number {
  tokens.push({ kind, text, start, end, hyphenAfter: false, role });
  return end;
}

/** "and / or" and its like, as one word. */
export function addAndOr(tokens: Token[], start: number, end: number): number {
  tokens.push({ kind: 'word', text: 'and/or', start, end, hyphenAfter: false, role: roleOf('and/or') });
  return end;
}
