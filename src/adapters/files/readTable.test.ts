import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fault } from '#core/errors.ts';
import { computed } from '../../../test/processorTime.ts';
import { readTable } from './readTable.ts';

const table = (text: string) => readTable(new TextEncoder().encode(text));
const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;

describe('readTable', () => {
  it.each([
    ['comma', 'name,sodiumMg\na,1\n'],
    ['semicolon', 'name;sodiumMg\na;1\n'],
    ['tab', 'name\tsodiumMg\na\t1\n'],
    ['semicolon beside commas in headings', 'name;"sodium, mg"\na;1'],
  ])('[CSV-4] the delimiter is found out: %s', (_, text) => {
    expect(table(text).rows).toEqual([{ row: 2, cells: ['a', '1'] }]);
  });

  // RFC 4180, section 2, rules 5 to 7: quoted fields, line breaks inside them, doubled quotes.
  it('[CSV-5] quoted cells may hold delimiters, line breaks and doubled quotes', () => {
    expect(table('name,statement\r\n"a ""b""","SALT,\r\nWATER"\r\nc,d').rows).toEqual([
      { row: 2, cells: ['a "b"', 'SALT,\nWATER'] },
      { row: 3, cells: ['c', 'd'] },
    ]);
  });

  it('[CSV-6] rows count as a spreadsheet shows them; empty ones count and are not rows of the table', () => {
    const { headings, rows } = table('\nname,sodiumMg\n\n,\n"a\nb",1\nc,2\n');
    expect(headings).toEqual(['name', 'sodiumMg']);
    expect(rows.map(({ row }) => row)).toEqual([5, 6]);
  });

  it('[CSV-7] line ends of three kinds in one file are all line ends', () => {
    expect(table('name,x\na,1\rb,2\r\nc,3\nd,4').rows.map(({ cells }) => cells[0])).toEqual(['a', 'b', 'c', 'd']);
  });

  it('[CSV-8] a quote that never closes spoils its own line only, and is reported', () => {
    const { rows, issues } = table('name,statement,x\na,"SALT, WATER,1\nb,"SUGAR",2\nc,OIL,3\n');
    expect(rows).toEqual([
      { row: 2, cells: ['a', 'SALT, WATER,1'] },
      { row: 3, cells: ['b', 'SUGAR', '2'] },
      { row: 4, cells: ['c', 'OIL', '3'] },
    ]);
    expect(issues.map(({ code, place }) => [code, place.row])).toContainEqual(['quote-not-closed', 2]);
  });

  it('[CSV-8] ten thousand quotes that never close are read in the time of a plain file', () => {
    const { result, milliseconds } = computed(() => table(`name,x\n${'"a,1\n'.repeat(9_999)}b,2\n`));
    const { rows } = result;
    expect(milliseconds).toBeLessThan(2_000);
    expect(rows.at(-1)).toEqual({ row: 10_001, cells: ['b', '2'] });
  });

  it('[CSV-9] an empty file and a workbook are faults with a next step', () => {
    for (const bytes of [new Uint8Array(), new TextEncoder().encode(' \n\n'), Uint8Array.of(0x50, 0x4b, 3, 4, 20)]) {
      expect(() => readTable(bytes)).toThrow(Fault);
    }
  });

  it('[CSV-10] any bytes give a table or a fault, in order and never more rows than lines', () => {
    const csvBytes = fc.oneof(
      fc.uint8Array({ maxLength: 400 }),
      fc
        .string({ unit: fc.constantFrom('"', ',', ';', '\t', '\n', '\r', 'a', '1', 'é', '\0'), maxLength: 200 })
        .map(text => new TextEncoder().encode(text)),
    );
    fc.assert(
      fc.property(csvBytes, bytes => {
        let read: ReturnType<typeof readTable>;
        try {
          read = readTable(bytes);
        } catch (error) {
          expect(error).toBeInstanceOf(Fault);
          return;
        }
        const rows = read.rows.map(({ row }) => row);
        expect(rows).toEqual([...new Set(rows)].sort((a, b) => a - b));
        expect(rows.length).toBeLessThanOrEqual(bytes.length);
      }),
      { numRuns },
    );
  });

  it('[CSV-11] what is written as quoted cells comes back letter by letter', () => {
    const cell = fc.string({ unit: fc.constantFrom('"', ',', ';', '\n', 'a', ' ', '=', 'é'), maxLength: 8 }).map(text => `x${text}x`);
    const grid = fc
      .integer({ min: 2, max: 4 })
      .chain(width => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }));
    fc.assert(
      fc.property(grid, cells => {
        const text = cells.map(row => row.map(value => `"${value.replaceAll('"', '""')}"`).join(',')).join('\n');
        const { headings, rows, issues } = table(text);
        expect([headings, ...rows.map(row => row.cells)]).toEqual(cells);
        expect(issues).toEqual([]);
      }),
      { numRuns },
    );
  });
});
