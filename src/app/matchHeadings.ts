import { Fault } from '#core/errors.ts';
import { type LabelHeading, labelHeading } from './labelHeadings.ts';

/** One column of a table that a label has a place for. */
export interface Column {
  /** Position in the row, from 0. */
  readonly at: number;
  /** The heading as it stands in the table. */
  readonly heading: string;
  readonly means: LabelHeading;
}

export interface MatchedHeadings {
  readonly columns: readonly Column[];
  /** Headings that a label has no place for, as they stand in the table. */
  readonly unknown: readonly string[];
}

/**
 * Finds the columns of a table of labels.
 *
 * @throws Fault table-without-headings when no heading is known, table-heading-twice when two columns are the same field,
 * table-heading-missing when there is no name or no panel figure.
 */
export function matchHeadings(headings: readonly string[]): MatchedHeadings {
  const columns = new Map<string, Column>();
  const unknown: string[] = [];
  for (const [at, printed] of headings.entries()) {
    const heading = printed.trim();
    const means = labelHeading(heading);
    if (means === undefined) {
      unknown.push(heading === '' ? `column ${columnLetters(at)}, without a heading` : heading);
      continue;
    }
    const earlier = columns.get(means.key);
    if (earlier !== undefined) {
      throw new Fault(
        'table-heading-twice',
        `Columns ${named(earlier.at, earlier.heading)} and ${named(at, heading)} are both ${means.key}.`,
      );
    }
    columns.set(means.key, { at, heading, means });
  }
  if (columns.size === 0) throw new Fault('table-without-headings', `The first row holds no heading of a label: ${shortList(headings)}.`);
  if (!columns.has('name')) throw new Fault('table-heading-missing', `There is no column "name". Found: ${shortList(headings)}.`);
  if (![...columns.values()].some(({ means }) => means.kind === 'panel')) {
    throw new Fault('table-heading-missing', `There is no column with a panel figure, such as "sodiumMg". Found: ${shortList(headings)}.`);
  }
  return { columns: [...columns.values()], unknown };
}

function named(at: number, heading: string): string {
  return `${columnLetters(at)} ("${heading}")`;
}

/** A to Z, then AA: as a spreadsheet names its columns. */
function columnLetters(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return at < 26 ? letter : columnLetters(Math.floor(at / 26) - 1) + letter;
}

function shortList(headings: readonly string[]): string {
  const shown = headings.filter(heading => heading.trim() !== '').map(heading => `"${heading.trim().slice(0, 40)}"`);
  return shown.length > 12 ? `${shown.slice(0, 12).join(', ')} and ${shown.length - 12} more` : shown.join(', ');
}
