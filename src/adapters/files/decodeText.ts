import type { TableIssueCode } from '#app/ports.ts';
import type { Reading } from '#core/errors.ts';

/**
 * The text of a file whose encoding nobody told: UTF-16 when it carries a mark, else UTF-8, else Windows-1252, as
 * spreadsheets write it. Text that is mostly UTF-8 with a few broken bytes stays UTF-8, with U+FFFD in their place.
 * Whatever is not plain UTF-8 or marked UTF-16 is reported.
 */
export function decodeText(bytes: Uint8Array): Reading<string, TableIssueCode> {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { value: new TextDecoder('utf-16le').decode(bytes), issues: [] };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { value: new TextDecoder('utf-16be').decode(bytes), issues: [] };
  try {
    return { value: new TextDecoder('utf-8', { fatal: true }).decode(bytes), issues: [] };
  } catch {
    return decodeNotUtf8(bytes);
  }
}

function decodeNotUtf8(bytes: Uint8Array): Reading<string, TableIssueCode> {
  const asUtf8 = new TextDecoder('utf-8').decode(bytes);
  const broken = count(asUtf8, /\uFFFD/g);
  // Letters of Windows-1252 hardly ever line up as UTF-8 by chance.
  const wellFormed = count(asUtf8, /[^\0-\x7F\uFFFD]/gu);
  if (wellFormed > broken) {
    return {
      value: asUtf8,
      issues: [
        { code: 'encoding-damaged', place: {}, found: `${broken} broken characters, shown as \uFFFD`, expected: 'UTF-8 throughout' },
      ],
    };
  }
  return {
    value: new TextDecoder('windows-1252').decode(bytes),
    issues: [
      { code: 'encoding-not-utf8', place: {}, found: 'bytes that are not UTF-8', expected: 'UTF-8; the file was read as Windows-1252' },
    ],
  };
}

function count(text: string, pattern: RegExp): number {
  let found = 0;
  for (const _ of text.matchAll(pattern)) found += 1;
  return found;
}
