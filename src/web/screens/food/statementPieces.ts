export interface Piece {
  /** Code points from the start of the text. */
  readonly start: number;
  readonly words: string;
  /** The look of the mark; absent for plain text. */
  readonly mark?: 'phosphate' | 'potassium' | 'trace';
  readonly title?: string;
}

interface Marked {
  readonly class: string;
  readonly counts: boolean;
  readonly start: number;
  readonly end: number;
  readonly why: string;
}

/**
 * Cuts a statement into plain pieces and marked ones. Positions are code points. Where several findings share words, a
 * phosphate that counts gives the look, then potassium that counts, then what is only reported; sodium has no mark.
 */
export function statementPieces(text: string, additives: readonly Marked[]): readonly Piece[] {
  const points = [...text];
  const marks = additives.filter(({ class: kind }) => kind !== 'sodium').sort((a, b) => a.start - b.start || b.end - a.end);
  const pieces: Piece[] = [];
  let at = 0;
  for (let index = 0; index < marks.length; ) {
    const { start } = marks[index]!;
    const group = marks.filter(mark => mark.start < (marks[index]?.end ?? 0) && mark.end > start && mark.start >= start);
    const end = Math.max(...group.map(mark => mark.end));
    if (start > at) pieces.push({ start: at, words: points.slice(at, start).join('') });
    pieces.push({ start, words: points.slice(start, end).join(''), mark: look(group), title: group.map(({ why }) => why).join(' ') });
    at = end;
    while (index < marks.length && marks[index]!.start < end) index += 1;
  }
  if (at < points.length) pieces.push({ start: at, words: points.slice(at).join('') });
  return pieces;
}

function look(group: readonly Marked[]): 'phosphate' | 'potassium' | 'trace' {
  const counts = (kind: string): boolean => group.some(mark => mark.counts && mark.class === kind);
  return counts('phosphate') ? 'phosphate' : counts('potassium') ? 'potassium' : 'trace';
}
