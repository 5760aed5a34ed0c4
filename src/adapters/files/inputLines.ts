import { Buffer, isUtf8 } from 'node:buffer';
import type { InputLine } from '#app/ports.ts';

const newline = 0x0a;

/**
 * A statement is a few kilobytes. A longer line is refused, so that memory stays flat whatever comes in.
 *
 * @internal
 */
export const longestLineBytes = 1024 * 1024;

/**
 * The lines of a byte stream, in blocks of as many as arrive together. A line that is too long or not UTF-8 is one issue
 * in its place; the lines around it are read. Line ends are LF or CRLF; a byte order mark at the start is taken off.
 */
export async function* inputLines(stream: AsyncIterable<Uint8Array>): AsyncGenerator<readonly InputLine[]> {
  let line = 1;
  /** The line that has not ended yet. Of one that is too long only the length is kept. */
  let begun: Buffer[] = [];
  let begunBytes = 0;

  const endWith = (bytes: Buffer): InputLine[] => {
    const lines: InputLine[] = [];
    const firstEnd = bytes.indexOf(newline);
    const firstBytes = begunBytes + (firstEnd < 0 ? bytes.length : firstEnd);
    if (firstBytes > longestLineBytes) {
      lines.push(tooLong(line, firstBytes));
      if (firstEnd >= 0) lines.push(...linesOf(bytes.subarray(firstEnd + 1), line + 1));
    } else {
      lines.push(...linesOf(begunBytes === 0 ? bytes : Buffer.concat([...begun, bytes]), line));
    }
    line += lines.length;
    begun = [];
    begunBytes = 0;
    return lines;
  };

  for await (const bytes of stream) {
    const chunk = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const lastEnd = chunk.lastIndexOf(newline);
    if (lastEnd >= 0) yield endWith(chunk.subarray(0, lastEnd));
    const rest = chunk.subarray(lastEnd + 1);
    begunBytes += rest.length;
    if (begunBytes > longestLineBytes) begun = [];
    else if (rest.length > 0) begun.push(rest);
  }
  if (begunBytes > 0) yield endWith(Buffer.alloc(0));
}

/** A block without its last line end. */
function linesOf(block: Buffer, first: number): InputLine[] {
  if (isUtf8(block)) {
    return block
      .toString('utf8')
      .split('\n')
      .map((text, index) => readText(text, first + index));
  }
  const lines: InputLine[] = [];
  for (let start = 0; start <= block.length; ) {
    const found = block.indexOf(newline, start);
    const end = found < 0 ? block.length : found;
    const bytes = block.subarray(start, end);
    const line = first + lines.length;
    lines.push(isUtf8(bytes) ? readText(bytes.toString('utf8'), line) : notUtf8(line));
    start = end + 1;
  }
  return lines;
}

function readText(text: string, line: number): InputLine {
  if (text.length > longestLineBytes) return tooLong(line, Buffer.byteLength(text));
  const unmarked = line === 1 && text.startsWith('\uFEFF') ? text.slice(1) : text;
  return { line, text: unmarked.endsWith('\r') ? unmarked.slice(0, -1) : unmarked };
}

function notUtf8(line: number): InputLine {
  return { line, issue: { code: 'line-not-utf8', place: { line }, found: 'bytes that are not UTF-8', expected: 'UTF-8 in every line' } };
}

function tooLong(line: number, bytes: number): InputLine {
  const expected = `at most ${longestLineBytes} bytes in a line`;
  return { line, issue: { code: 'line-too-long', place: { line }, found: `${bytes} bytes`, expected } };
}
