import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvRow } from './csvRow.ts';

describe('csvRow', () => {
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])('[CLI-7] %s gets a leading apostrophe', text => {
    expect(Papa.parse<string[]>(csvRow([text])).data[0]).toEqual([`'${text}`]);
  });

  it('[CLI-8] what is written reads back, whatever it holds', () => {
    const cell = fc.string({ unit: fc.constantFrom('"', ',', ';', '\n', '\r', ' ', 'a', 'é') });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 2, maxLength: 4 }), cells => {
        const back = Papa.parse<string[]>(csvRow(cells), { delimiter: ',', newline: '\n' }).data[0];
        expect(back?.map(text => text.replace(/^'(?=[\t\r\n])/, ''))).toEqual(cells);
      }),
    );
  });
});
