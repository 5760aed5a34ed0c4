import type { AdditiveRow } from './additiveTable.ts';

/** What the stem of a name tells that is not in the table. */
export type Stem = 'phosphate' | 'phosphate-organic' | 'phosphate-unread' | 'potassium' | 'sodium';

/** A stretch of words that names a row of the table, or a name that only its chemical stem tells. */
export interface Match {
  readonly row: AdditiveRow | undefined;
  /** For a name that is not in the table: what its stem tells, and the words as read. */
  readonly stem: Stem | undefined;
  readonly stemName: string;
  /** First and last word, inclusive. */
  readonly from: number;
  readonly to: number;
  readonly repaired: boolean;
  /** One of several that share a head or tail joined by "or". */
  readonly alternative: boolean;
  /** An abbreviation that means other things too: stands only beside another additive. */
  readonly needsNeighbor: boolean;
}

/** Names of the table found from one place on, and the word to go on at. */
export interface Matches {
  readonly matches: readonly Match[];
  readonly next: number;
}

export function rowMatch(row: AdditiveRow, from: number, to: number, repaired = false, alternative = false, needsNeighbor = false): Match {
  return { row, stem: undefined, stemName: '', from, to, repaired, alternative, needsNeighbor };
}

export function stemMatch(stem: Stem, stemName: string, from: number, to: number, repaired = false): Match {
  return { row: undefined, stem, stemName, from, to, repaired, alternative: false, needsNeighbor: false };
}
