import { Fault } from '#core/errors.ts';
import { columnNumber } from './sheetRows.ts';
import { broken, type ZipParts } from './unpack.ts';
import { walkXml } from './walkXml.ts';

interface Merge {
  readonly master: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A table of labels has none; so many are no table (own decision). */
const mostMerges = 10_000;

interface Covered {
  readonly column: number;
  /** The cell that shows what is in all of them, "C2". */
  readonly master: string;
}

/**
 * The cells of a sheet that a merge covers, asked for row after row: up to a width, all but the first cell of each merge. They stand behind
 * the rows of a sheet, so that it is gone through once more, and only where there are any.
 *
 * @throws Fault workbook-not-readable, table-too-large
 */
export function mergesOf(parts: ZipParts, part: string): (row: number) => (width: number) => Iterable<Covered> {
  const merges = holdsMerges(parts, part) ? readMerges(parts, part) : [];
  merges.sort((a, b) => a.top - b.top);
  let next = 0;
  let open: Merge[] = [];
  return row => {
    if (open.length > 0) open = open.filter(({ bottom }) => bottom >= row);
    for (; next < merges.length && merges[next]!.top <= row; next += 1) if (merges[next]!.bottom >= row) open.push(merges[next]!);
    return width => covered(open, row, width);
  };
}

function* covered(open: readonly Merge[], row: number, width: number): Iterable<Covered> {
  for (const { master, left, right, top } of open) {
    for (let column = left; column <= Math.min(right, width); column += 1) if (row !== top || column !== left) yield { column, master };
  }
}

/** Looked for as bytes, which is a tenth of the work of walking through the sheet. */
function holdsMerges(parts: ZipParts, part: string): boolean {
  const marks = (['utf8', 'utf16le'] as const).map(encoding => Buffer.from('mergeCell', encoding));
  let tail = Buffer.alloc(0);
  let isFound = false;
  parts.read(part, bytes => {
    const text = Buffer.concat([tail, bytes]);
    isFound = marks.some(mark => text.includes(mark));
    tail = text.subarray(-2 * 'mergeCell'.length);
    return !isFound;
  });
  return isFound;
}

function readMerges(parts: ZipParts, part: string): Merge[] {
  const merges: Merge[] = [];
  walkXml(parts, part, {
    open: (name, attribute) => {
      if (name !== 'mergeCell') return true;
      const ends = /^([A-Z]{1,3})(\d{1,7})(?::([A-Z]{1,3})(\d{1,7}))?$/.exec(attribute('ref') ?? '');
      if (ends === null) throw broken('a merge of cells names none');
      const [, left, top, right = left, bottom = top] = ends;
      merges.push({
        master: `${left}${top}`,
        left: columnNumber(left!),
        right: columnNumber(right!),
        top: Number(top),
        bottom: Number(bottom),
      });
      if (merges.length > mostMerges)
        throw new Fault('table-too-large', `The sheet has more than ${mostMerges.toLocaleString('en-US')} merged cells.`);
      return true;
    },
  });
  return merges;
}
