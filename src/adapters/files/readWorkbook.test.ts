import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fault } from '#core/errors.ts';
import { numberText } from './cellText.ts';
import { readTable } from './readTable.ts';
import { inline, sheetData, type WorkbookParts, workbookFile, workbookXml, zipped } from './workbook.fixture.ts';

const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 500;
const read = (xml: string, more: Partial<WorkbookParts> = {}) => readTable(workbookFile({ sheets: [{ name: 'Shelf', xml }], ...more }));
const codes = ({ issues }: ReturnType<typeof readTable>) => issues.map(({ code }) => code);
/** What a cell under the heading "x" is read as. */
const cell = (xml: string, more: Partial<WorkbookParts> = {}) => read(sheetData([['x'], [xml]]), more).rows[0]?.cells[0];
/** A style for each number format: built in by its number, else by a code of its own. */
const styled = (...formats: readonly (number | string)[]): Partial<WorkbookParts> => ({
  styles: `<numFmts>${formats
    .map((format, at) => (typeof format === 'string' ? `<numFmt numFmtId="${164 + at}" formatCode="${format}"/>` : ''))
    .join(
      '',
    )}</numFmts><cellXfs><xf/>${formats.map((format, at) => `<xf numFmtId="${typeof format === 'string' ? 164 + at : format}"/>`).join('')}</cellXfs>`,
});

describe('readWorkbook', () => {
  // ECMA-376 part 1, 18.3.1.4, 18.18.11: the types of a cell.
  test('[FIL-10] texts shared, inline, in runs; numbers, booleans, errors, days: as the cell shows them', () => {
    const texts =
      '<si><t>Ham &amp; cheese</t></si><si><r><t>Oat</t></r><r><rPr><b/></rPr><t xml:space="preserve"> milk</t></r><rPh sb="0" eb="1"><t>no</t></rPh></si>';
    expect(cell('<c t="s"><v>0</v></c>', { texts })).toBe('Ham & cheese');
    expect(cell('<c t="s"><v>1</v></c>', { texts })).toBe('Oat milk');
    expect(cell('<c t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r></is></c>')).toBe('ab');
    expect(cell('<c t="str"><f>A1</f><v>c</v></c>')).toBe('c');
    expect(cell('<c t="b"><v>1</v></c>')).toBe('TRUE');
    expect(cell('<c t="e"><v>#DIV/0!</v></c>')).toBe('#DIV/0!');
    expect(cell('<c t="d"><v>2026-10-14T00:00:00</v></c>')).toBe('2026-10-14');
    // ECMA-376 part 1, 22.9.2.19.
    expect(cell(inline('a_x000A_b'))).toBe('a\nb');
    for (const [xml, shown] of [
      ['0.30000000000000004', '0.3'],
      ['4.10224001019E11', '410224001019'],
      ['-0.5', '-0.5'],
      ['1E3', '1000'],
    ])
      expect(cell(`<c><v>${xml}</v></c>`)).toBe(shown);
  });

  // ECMA-376 part 1, 18.17.4.1: serial 1 is 1900-01-01, 60 the 29th of February that never was, 61 the first of March; 0 is 1904-01-01 in the other system.
  test.each([
    ['1', 1900, '1900-01-01'],
    ['59', 1900, '1900-02-28'],
    ['60', 1900, '1900-02-29'],
    ['61', 1900, '1900-03-01'],
    ['46309.75', 1900, '2026-10-14'],
    ['2958465', 1900, '9999-12-31'],
    ['2958466', 1900, '2958466'],
    ['-1', 1900, '-1'],
    ['0', 1904, '1904-01-01'],
    ['44847', 1904, '2026-10-14'],
  ] as const)('[FIL-11] day %s of the system of %i is %s', (serial, system, day) => {
    expect(numberText(serial, { kind: 'date' }, system)).toBe(day);
    const properties = system === 1904 ? 'date1904="1"' : '';
    expect(cell(`<c s="1"><v>${serial}</v></c>`, { ...styled(14), properties })).toBe(day);
  });

  test.each([
    ['yyyy\\-mm\\-dd;@', '46309', '2026-10-14'],
    ['[$-409]d\\-mmm\\-yy', '46309', '2026-10-14'],
    [22, '46309.5', '2026-10-14'],
    ['h:mm', '0.5', '12:00'],
    [10, '0.125', '12.5%'],
    ['0%', '0.07', '7%'],
    ['00000000000000', '410224001019', '00410224001019'],
    ['0.00&quot; days&quot;', '0.5', '0.5'],
    ['[Red]0.0', '0.25', '0.25'],
    ['General', '7', '7'],
  ])('[FIL-11] format %s shows %s as %s, without rounding', (format, number, shown) => {
    expect(cell(`<c s="1"><v>${number}</v></c>`, styled(format))).toBe(shown);
  });

  test('[FIL-12] rows and cells without references stand in order; gaps are empty; empty rows count and are none', () => {
    const { headings, rows } = read(
      `<sheetData><row r="2">${inline('name')}<c r="C2" t="str"><v>sodiumMg</v></c></row><row r="5"><c r="C5"><v>7</v></c></row><row/><row>${inline('a')}</row></sheetData>`,
    );
    expect(headings).toEqual(['name', '', 'sodiumMg']);
    expect(rows).toEqual([
      { row: 5, cells: ['', '', '7'] },
      { row: 7, cells: ['a', '', ''] },
    ]);
  });

  test('[FIL-13] a formula is told with its last result; without one the cell is empty', () => {
    const table = read(
      sheetData([
        ['x', 'y'],
        ['<c><f>100+130</f><v>230</v></c>', '<c><f t="shared" si="0"/></c>'],
      ]),
    );
    expect(table.rows[0]?.cells).toEqual(['230', '']);
    expect(table.issues.map(({ code, place, found }) => [code, place.heading, found])).toEqual([
      ['cell-with-formula', 'x', '=100+130'],
      ['cell-with-formula', 'y', 'a formula'],
    ]);
  });

  test('[FIL-14] of merged cells the first holds the text; what stands hidden under the merge is not read', () => {
    const table = read(
      `${sheetData([
        ['x', 'y'],
        ['a', 'b'],
        ['c', 'd'],
      ])}<mergeCells><mergeCell ref="A2:A3"/></mergeCells>`,
    );
    expect(table.rows.map(({ cells }) => cells)).toEqual([
      ['a', 'b'],
      ['', 'd'],
    ]);
    expect(table.issues).toMatchObject([{ code: 'cell-merged', place: { row: 3, heading: 'x' }, found: 'a cell merged with A2' }]);
  });

  test('[FIL-15] the first sheet that is shown and holds anything is read; others, hidden sheets and hidden rows are told', () => {
    const sheets = [
      { name: 'Old', xml: sheetData([['old']]), state: 'hidden' as const },
      { name: 'Blank', xml: sheetData([[' ']]) },
      { name: 'Shelf', xml: `<sheetData><row>${inline('x')}</row><row hidden="1">${inline('a')}</row></sheetData>` },
    ];
    const table = readTable(workbookFile({ sheets }));
    expect([table.headings, table.rows.length, codes(table)]).toEqual([['x'], 1, ['more-than-one-sheet', 'rows-hidden']]);
    expect(readTable(workbookFile({ sheets: sheets.slice(0, 2) })).headings).toEqual(['old']);
  });

  test('[FIL-16] the strict form, prefixes and a target from the root are read', () => {
    const strict = 'http://purl.oclc.org/ooxml';
    const parts = {
      '_rels/.rels': `<Relationships><Relationship Id="a" Type="${strict}/officeDocument/relationships/officeDocument" Target="/book/wb.xml"/></Relationships>`,
      'xl/workbook.xml': undefined,
      'book/wb.xml': `<x:workbook xmlns:x="${strict}/spreadsheetml/main" xmlns:q="${strict}/officeDocument/relationships"><x:sheets><x:sheet name="A" q:id="b"/></x:sheets></x:workbook>`,
      'book/_rels/wb.xml.rels': `<Relationships><Relationship Id="b" Type="${strict}/officeDocument/relationships/worksheet" Target="../s.xml"/></Relationships>`,
      's.xml': `<x:worksheet xmlns:x="${strict}/spreadsheetml/main"><x:sheetData><x:row><x:c t="inlineStr"><x:is><x:t>x</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`,
    };
    expect(readTable(workbookFile({ sheets: [], parts })).headings).toEqual(['x']);
  });

  test('[FIL-17] whatever the bytes and the XML: a table or a fault', () => {
    const whole = workbookXml({
      sheets: [
        {
          name: 'A',
          xml: `${sheetData([
            ['name', 'x'],
            ['a', '<c s="1"><f>1+1</f><v>2</v></c>'],
          ])}<mergeCells><mergeCell ref="A2:B2"/></mergeCells>`,
        },
      ],
      texts: '<si><t>b</t></si>',
      ...styled('yyyy'),
    });
    const names = Object.keys(whole);
    const pieces = [
      '<row r="9">',
      '</row>',
      '<c t="s"><v>0</v></c>',
      '&amp;',
      '&x;',
      '<![CDATA[',
      ']]>',
      '<!--',
      '-->',
      'r="ZZ9"',
      '"',
      '>',
      '\0',
      '<f>',
      '1e999',
      ' t="d"',
    ];
    const changed = fc
      .array(fc.tuple(fc.constantFrom(...names), fc.nat(400), fc.nat(20), fc.constantFrom(...pieces)), { minLength: 1, maxLength: 3 })
      .map(changes => {
        const parts = { ...whole };
        for (const [name, at, cut, put] of changes) {
          const text = String(parts[name]);
          parts[name] = text.slice(0, at) + put + text.slice(at + cut);
        }
        return zipped(parts);
      });
    const file = zipped(whole);
    const spoiled = fc
      .tuple(fc.array(fc.tuple(fc.nat(file.length - 1), fc.nat(255)), { maxLength: 8 }), fc.nat(file.length))
      .map(([changes, length]) => {
        const copy = file.slice(0, changes.length % 2 === 0 ? file.length : length);
        for (const [at, value] of changes) if (at > 3 && at < copy.length) copy[at] = value;
        return copy;
      });
    fc.assert(
      fc.property(fc.oneof(changed, spoiled), bytes => {
        try {
          const { headings, rows } = readTable(bytes);
          for (const text of [headings, ...rows.map(({ cells }) => cells)].flat()) expect(typeof text).toBe('string');
        } catch (error) {
          expect(error).toBeInstanceOf(Fault);
        }
      }),
      { numRuns },
    );
  }, 300_000);
});
