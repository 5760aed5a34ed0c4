const rowsOfABlock = 25;

/**
 * The blocks of 25 rows in which the rows from `first` to `last` lie. A block stays the same while the order does, so that what is asked for
 * a block is asked once.
 */
export function blocksOf<Row>(rows: readonly Row[], first: number, last: number): readonly (readonly Row[])[] {
  if (last < first) return [];
  const from = Math.floor(first / rowsOfABlock);
  const to = Math.floor(last / rowsOfABlock);
  return Array.from({ length: to - from + 1 }, (_, at) => rows.slice((from + at) * rowsOfABlock, (from + at + 1) * rowsOfABlock));
}
