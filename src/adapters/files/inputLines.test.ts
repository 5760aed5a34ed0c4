import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inputLines, longestLineBytes } from './inputLines.ts';

const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;
const utf8 = (text: string) => new TextEncoder().encode(text);

async function linesOf(...chunks: Uint8Array[]) {
  const stream = (async function* () {
    yield* chunks;
  })();
  const lines = [];
  for await (const block of inputLines(stream)) lines.push(...block);
  return lines.map(({ line, ...read }) => [line, 'text' in read ? read.text : read.issue.code]);
}

describe('inputLines', () => {
  it('[LINE-1] LF and CRLF end a line, the last one may be open, an empty line is a line', async () => {
    expect(await linesOf(utf8('a\r\n\nb'))).toEqual([
      [1, 'a'],
      [2, ''],
      [3, 'b'],
    ]);
    expect(await linesOf(utf8('a\n'))).toEqual([[1, 'a']]);
    expect(await linesOf()).toEqual([]);
  });

  it('[LINE-2] a byte order mark at the start is no part of the first line', async () => {
    expect(await linesOf(utf8('\uFEFFa\n\uFEFFb'))).toEqual([
      [1, 'a'],
      [2, '\uFEFFb'],
    ]);
  });

  it('[LINE-3] a line that is not UTF-8 is one issue in its place', async () => {
    expect(await linesOf(utf8('a\n'), Uint8Array.of(0xff, 0xfe, 0x0a), utf8('c'))).toEqual([
      [1, 'a'],
      [2, 'line-not-utf8'],
      [3, 'c'],
    ]);
  });

  it('[LINE-4] a line of 10 MB is one issue in its place, the lines around it are read', async () => {
    const piece = utf8('x'.repeat(64 * 1024));
    const long = Array.from({ length: 160 }, () => piece);
    expect(await linesOf(utf8('a\n'), ...long, utf8('\n\nd\n'))).toEqual([
      [1, 'a'],
      [2, 'line-too-long'],
      [3, ''],
      [4, 'd'],
    ]);
    expect(await linesOf(...long)).toEqual([[1, 'line-too-long']]);
    expect(await linesOf(utf8('x'.repeat(longestLineBytes)))).toEqual([[1, 'x'.repeat(longestLineBytes)]]);
  });

  it('[LINE-5] however the bytes are cut into chunks, the lines are the same', async () => {
    const text = fc.string({ unit: fc.constantFrom('a', '\n', '\r', 'é', '\u{1F35E}', '\0'), maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(text, fc.array(fc.nat(60), { maxLength: 6 }), async (whole, cuts) => {
        const bytes = utf8(whole);
        const at = [0, ...cuts.map(cut => Math.min(cut, bytes.length)).sort((a, b) => a - b), bytes.length];
        const chunks = at.slice(1).map((end, index) => bytes.subarray(at[index], end));
        const expected = whole
          .replace(/\n$/, '')
          .split('\n')
          .map((line, index) => [index + 1, line.replace(/\r$/, '')]);
        expect(await linesOf(...chunks)).toEqual(whole === '' ? [] : expected);
      }),
      { numRuns },
    );
  });
});
