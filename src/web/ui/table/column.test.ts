import { describe, expect, it } from 'vitest';
import { type Column, rowsWith, sortedRows } from './column.ts';

interface Row {
  readonly name: string;
  readonly sodium: number | null;
}
const rows: readonly Row[] = [
  { name: 'Rye bread', sodium: 200 },
  { name: 'wheat bread', sodium: null },
  { name: 'Äpple 10', sodium: 0 },
  { name: 'Äpple 9', sodium: 200 },
];
const columns: readonly Column<Row>[] = [
  { key: 'name', name: 'Food', cell: row => row.name, sortBy: row => row.name },
  { key: 'sodium', name: 'Sodium', cell: row => row.sodium, sortBy: row => row.sodium },
  { key: 'why', name: 'Why', cell: () => '' },
];
const namesBy = (key: string, isDown: boolean): readonly string[] => sortedRows(rows, columns, { key, isDown }).map(({ name }) => name);

describe('rows of a table', () => {
  it('[WEB-5] what is not known stands at the end, whichever way it is sorted; rows that are alike keep their order', () => {
    expect(namesBy('sodium', false)).toEqual(['Äpple 10', 'Rye bread', 'Äpple 9', 'wheat bread']);
    expect(namesBy('sodium', true)).toEqual(['Rye bread', 'Äpple 9', 'Äpple 10', 'wheat bread']);
  });

  it('[WEB-5] words are sorted as people do: case and accents aside, numbers by size', () => {
    expect(namesBy('name', false)).toEqual(['Äpple 9', 'Äpple 10', 'Rye bread', 'wheat bread']);
  });

  it('[WEB-5] a column that is not sorted by leaves the order as it is', () => {
    expect(namesBy('why', true)).toEqual(rows.map(({ name }) => name));
    expect(sortedRows(rows, columns, undefined)).toBe(rows);
  });

  it('[WEB-5] a filter finds rows with every word', () => {
    expect(rowsWith(rows, row => row.name, ' bread RYE ').map(({ name }) => name)).toEqual(['Rye bread']);
    expect(rowsWith(rows, row => row.name, '')).toBe(rows);
  });
});
