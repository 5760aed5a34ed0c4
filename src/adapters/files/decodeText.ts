import { isAscii } from 'node:buffer';
import { TextDecoder } from 'node:util';
import type { TableIssueCode } from '#app/ports.ts';
import type { Issue, Reading } from '#core/errors.ts';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/**
 * The encoding of a file that does not tell it: UTF-16 when it carries a mark, else UTF-8, else Windows-1252, as spreadsheets write it. Text
 * that is mostly UTF-8 with a few broken bytes stays UTF-8, with U+FFFD in their place. Whatever is not plain UTF-8 or marked UTF-16 is reported.
 * The file is taken piece by piece, so that its size does not matter.
 */
export class EncodingGuess {
  private mark: Encoding | undefined;
  private hasBegun = false;
  private strict: TextDecoder | undefined = new TextDecoder('utf-8', { fatal: true });
  private readonly loose = new TextDecoder('utf-8');
  private isWhole = true;
  private broken = 0;
  private wellFormed = 0;

  take(bytes: Uint8Array): void {
    if (!this.hasBegun && bytes.length > 1) {
      this.hasBegun = true;
      if (bytes[0] === 0xff && bytes[1] === 0xfe) this.mark = 'utf-16le';
      if (bytes[0] === 0xfe && bytes[1] === 0xff) this.mark = 'utf-16be';
    }
    if (this.mark === undefined) this.look(bytes, true);
  }

  /** After the last piece. */
  end(): Reading<Encoding, TableIssueCode> {
    if (this.mark !== undefined) return { value: this.mark, issues: [] };
    this.look(new Uint8Array(), false);
    if (this.strict !== undefined) return { value: 'utf-8', issues: [] };
    // Letters of Windows-1252 hardly ever line up as UTF-8 by chance.
    return this.wellFormed > this.broken
      ? { value: 'utf-8', issues: [damaged(this.broken)] }
      : { value: 'windows-1252', issues: [notUtf8] };
  }

  private look(bytes: Uint8Array, stream: boolean): void {
    // Plain letters say nothing, unless a character was begun before.
    const isPlain = this.isWhole && isAscii(bytes);
    if (bytes.length > 0) this.isWhole = bytes[bytes.length - 1]! < 0x80;
    if (isPlain) return;
    const text = this.loose.decode(bytes, { stream });
    this.broken += count(text, /\uFFFD/g);
    this.wellFormed += count(text, /[^\0-\x7F\uFFFD]/gu);
    try {
      this.strict?.decode(bytes, { stream });
    } catch {
      this.strict = undefined;
    }
  }
}

/** The text of a file whose encoding nobody told. @internal */
export function decodeText(bytes: Uint8Array): Reading<string, TableIssueCode> {
  const guess = new EncodingGuess();
  guess.take(bytes);
  const { value: encoding, issues } = guess.end();
  return { value: new TextDecoder(encoding).decode(bytes), issues };
}

function damaged(broken: number): Issue<TableIssueCode> {
  return { code: 'encoding-damaged', place: {}, found: `${broken} broken characters, shown as \uFFFD`, expected: 'UTF-8 throughout' };
}

const notUtf8: Issue<TableIssueCode> = {
  code: 'encoding-not-utf8',
  place: {},
  found: 'bytes that are not UTF-8',
  expected: 'UTF-8; the file was read as Windows-1252',
};

function count(text: string, pattern: RegExp): number {
  let found = 0;
  for (const _ of text.matchAll(pattern)) found += 1;
  return found;
}
