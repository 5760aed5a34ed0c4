import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { Fault } from '#core/errors.ts';
import { importLabels } from './importLabels.ts';

const table = (headings: string[], ...rows: string[][]) => ({
  headings,
  rows: rows.map((cells, index) => ({ row: index + 2, cells })),
  issues: [],
});

function faultOf(headings: string[]) {
  try {
    importLabels(table(headings));
  } catch (error) {
    if (error instanceof Fault) return { code: error.code, message: error.message };
    throw error;
  }
  return undefined;
}

describe('importLabels', () => {
  it('[CSV-22] a row becomes a label: serving, claims, figures as printed', () => {
    const headings = ['Product', 'Brand', 'Serving size', 'Serving (g)', 'Front', 'Calories', 'Sodium (mg)', 'Ingredients'];
    const { value, issues } = importLabels(
      table(headings, ['Beef', 'Osterby & Vane', '4 slices', '56', 'lean | reduced sodium', '80', '230 mg 10%', 'BEEF, SALT.']),
    );
    expect(issues).toEqual([]);
    expect(value.map(({ row }) => row)).toEqual([2]);
    expect(value[0]?.label.printed).toMatchObject({
      name: 'Beef',
      maker: 'Osterby & Vane',
      serving: { household: '4 slices', grams: '56' },
      front: ['lean', 'reduced sodium'],
      panel: { energyKcal: '80', sodiumMg: '230 mg 10%' },
      statement: 'BEEF, SALT.',
    });
    // 21 CFR 101.9(c)(4): above 140 mg sodium prints to the nearest 10 mg.
    expect(value[0]?.label.amounts.sodiumMg).toMatchObject({ kind: 'known', printed: 230, range: { lo: 225, hi: 235 } });
  });

  it('[CSV-23] an empty cell is not printed: unknown, never zero', () => {
    const { value } = importLabels(table(['name', 'sodiumMg', 'potassiumMg'], ['Beef', '230', ' ']));
    expect(value[0]?.label.printed.panel).toEqual({ sodiumMg: '230' });
    expect(value[0]?.label.amounts.potassiumMg).toMatchObject({ kind: 'unknown' });
  });

  it('[CSV-24] the same field in two columns is a fault that names both', () => {
    const fault = faultOf(['name', 'sodiumMg', 'Sodium (mg)']);
    expect(fault?.code).toBe('table-heading-twice');
    expect(fault?.message).toContain('B ("sodiumMg")');
    expect(fault?.message).toContain('C ("Sodium (mg)")');
  });

  it('[CSV-24] column letters go on after Z as a spreadsheet has them', () => {
    const others = Array.from({ length: 25 }, (_, index) => `other ${index}`);
    expect(faultOf(['name', ...others, 'sodiumMg', 'Sodium'])?.message).toContain('AA ("sodiumMg") and AB ("Sodium")');
  });

  it.each([
    [['sodiumMg'], 'table-heading-missing', '"name"'],
    [['name', 'maker'], 'table-heading-missing', 'panel figure'],
    [['Beef', '230'], 'table-without-headings', '"Beef", "230"'],
  ])('[CSV-25] %s: %s', (headings, code, words) => {
    const fault = faultOf(headings);
    expect(fault?.code).toBe(code);
    expect(fault?.message).toContain(words);
  });

  it('[CSV-26] a table with headings alone has no labels and nothing to report', () => {
    expect(importLabels(table(['name', 'sodiumMg']))).toEqual({ value: [], issues: [] });
  });

  it('[CSV-27] a column that a label has no place for is named once', () => {
    const { value, issues } = importLabels(table(['name', 'price', 'sodiumMg'], ['a', '1', '2'], ['b', '3', '4']));
    expect(value).toHaveLength(2);
    expect(issues).toEqual([expect.objectContaining({ code: 'column-not-known', found: 'price' })]);
  });

  it('[CSV-28] a row with more cells than headings is left out and named, the others stay', () => {
    const { value, issues } = importLabels(table(['name', 'sodiumMg'], ['a', 'b', '2'], ['c', '3'], ['d', '4', '', '']));
    expect(value.map(({ label }) => label.printed.name)).toEqual(['c', 'd']);
    expect(issues).toEqual([expect.objectContaining({ code: 'row-too-long', place: { row: 2 }, found: '3 cells' })]);
  });

  it('[CSV-29] a row with fewer cells stays, what is missing is unknown, and that is reported', () => {
    const { value, issues } = importLabels(table(['name', 'energyKcal', 'sodiumMg'], ['a', '80']));
    expect(value[0]?.label.amounts.sodiumMg.kind).toBe('unknown');
    expect(issues).toEqual([expect.objectContaining({ code: 'row-too-short', place: { row: 2 }, found: '2 cells' })]);
  });

  it('[CSV-30] a row without a name is left out and named', () => {
    const { value, issues } = importLabels(table(['name', 'sodiumMg'], ['', '2'], ['b', '3']));
    expect(value.map(({ row }) => row)).toEqual([3]);
    expect(issues.map(({ code, place }) => [code, place.row])).toEqual([['row-without-name', 2]]);
  });

  it('[CSV-31] a formula is text: reported once in a number column, kept in a name, never calculated', () => {
    const { value, issues } = importLabels(table(['name', 'sodiumMg', 'energyKcal'], ['=1+1', '=A1*2', '80']));
    expect(value[0]?.label.printed).toMatchObject({ name: '=1+1', panel: { sodiumMg: '=A1*2', energyKcal: '80' } });
    expect(value[0]?.label.amounts.sodiumMg.kind).toBe('unknown');
    expect(issues.map(({ code, place, found }) => [code, place.row, place.heading, found])).toEqual([
      ['formula-in-number-column', 2, 'sodiumMg', '=A1*2'],
    ]);
  });

  it('[CSV-32] a figure that cannot be read is unknown and reported by row and heading of the table', () => {
    const { value, issues } = importLabels(table(['name', 'Sodium (mg)'], ['a', 'plenty'], ['b', '3']));
    expect(value).toHaveLength(2);
    expect(value[0]?.label.amounts.sodiumMg.kind).toBe('unknown');
    expect(issues.map(({ place, found }) => [place.row, place.heading, found])).toEqual([[2, 'Sodium (mg)', 'plenty']]);
  });

  it('[CSV-34] market, basis and state are words without regard to case and blanks; another word leaves the row out', () => {
    const { value, issues } = importLabels(
      table(['name', 'sodiumMg', 'market', 'basis', 'state'], ['a', '1', 'US', 'Per Serving', 'Drained'], ['b', '2', 'mars', '', '']),
    );
    expect(value.map(({ label }) => label.printed)).toMatchObject([{ market: 'us', basis: 'per-serving', state: 'drained' }]);
    expect(issues.map(({ place, found }) => [place.row, place.heading, found])).toEqual([
      [3, 'market', 'mars'],
      [3, undefined, 'b'],
    ]);
  });

  it('[CSV-33] broken characters in a cell are reported, the cell stays', () => {
    const { value, issues } = importLabels(table(['name', 'sodiumMg'], ['Cr\0me', '3']));
    expect(value).toHaveLength(1);
    expect(issues.map(({ code, place }) => [code, place.row, place.heading])).toEqual([['text-damaged', 2, 'name']]);
  });

  it('[CSV-35] whatever the bytes under the headings: every row becomes a label or is named in the report', () => {
    const head = new TextEncoder().encode('name,sodiumMg,Calories,servingGrams,basis,statement\n');
    const cell = fc.oneof(
      fc.constantFrom(
        '',
        '230',
        '<1 g',
        '10%',
        '0,8 g',
        '=A1',
        '1 200',
        'SALT (',
        '"',
        '"x',
        '-5',
        'per-100-g',
        'Beef',
        '\n',
        '\0',
        '1e999',
      ),
      fc.string({ unit: 'binary', maxLength: 6 }),
    );
    const rows = fc
      .array(
        fc.array(cell, { minLength: 1, maxLength: 8 }).map(cells => cells.join(',')),
        { maxLength: 8 },
      )
      .map(lines => lines.join('\n'));
    const body = fc.oneof(
      fc.uint8Array({ maxLength: 200 }),
      rows.map(text => new TextEncoder().encode(text)),
    );
    fc.assert(
      fc.property(body, bytes => {
        const read = readTable(Uint8Array.from([...head, ...bytes]));
        const { value, issues } = importLabels(read);
        const told = new Set([...value.map(({ row }) => row), ...issues.map(({ place }) => place.row)]);
        expect(read.rows.filter(({ row }) => !told.has(row))).toEqual([]);
        for (const { label } of value) {
          // 21 CFR 101.9 knows no negative figure; an empty cell is unknown.
          for (const amount of Object.values(label.amounts)) if (amount.kind === 'known') expect(amount.range.lo).toBeGreaterThanOrEqual(0);
          expect(label.amounts.potassiumMg.kind).toBe('unknown');
        }
      }),
      { numRuns: process.env.PLATEWRIGHT_LONG ? 100_000 : 100 },
    );
  }, 300_000);
});
