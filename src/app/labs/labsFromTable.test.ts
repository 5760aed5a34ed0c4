import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { labsFromTable } from './labsFromTable.ts';

const read = (...lines: readonly string[]) => labsFromTable(readTable(new TextEncoder().encode(lines.join('\n'))), '2026-11-30');
const codes = (...lines: readonly string[]) => read(...lines).issues.map(({ code, place }) => [code, place.row]);
const heading = 'Analyte,Value,Unit,Date';

describe('laboratory results from a table', () => {
  it('[FHR-6] by name or by LOINC code, with value and unit as they stand', () => {
    expect(
      read(
        'Analyte;LOINC;Value;Unit;Date;Time;Upper normal;Hemolyzed',
        'Potassium;;5.2;mmol/L;2026-06-05;07:30;5.1;',
        ';14879-1;1.9;mmol/L;2026-06-05;;;no',
        'urea nitrogen (BUN);3094-0;70;mg/dl;2026-06-05;;;yes',
        'BUN;;25;mmol/L;2026-05-05;;;',
        'creatinine;;132.6;µmol/L;2026-06-05;;;',
      ),
    ).toEqual({
      value: [
        { analyte: 'potassium', value: 5.2, unit: 'mmol/L', takenOn: '2026-06-05', takenAt: '07:30', upperNormal: 5.1 },
        { analyte: 'phosphate', value: 1.9, unit: 'mmol/L', takenOn: '2026-06-05' },
        { analyte: 'ureaNitrogen', value: 70, unit: 'mg/dL', takenOn: '2026-06-05', hemolyzed: true },
        { analyte: 'ureaNitrogen', value: 25, unit: 'mmol/L', takenOn: '2026-05-05' },
        { analyte: 'creatinine', value: 132.6, unit: 'umol/L', takenOn: '2026-06-05' },
      ],
      issues: [],
      person: {},
    });
  });

  it('[FHR-7] a value without a unit is refused, with its row', () => {
    expect(read(heading, 'potassium,5.2,,2026-06-05')).toMatchObject({
      value: [],
      issues: [{ code: 'lab-unit-missing', place: { row: 2 }, found: 'potassium 5.2 without a unit' }],
    });
  });

  it('[FHR-7] an unknown name or code is reported, and one that contradicts the other', () => {
    // Urea in mg/dL is 2.14 times BUN: the bare word is not read as BUN. Facts sheet, section 4.1.
    expect(codes(heading, 'urea,60,mg/dL,2026-06-05', 'constructor,5,mmol/L,2026-06-05')).toEqual([
      ['lab-analyte-not-known', 2],
      ['lab-analyte-not-known', 3],
    ]);
    expect(codes('loinc,value,unit,date', '0000-0,5,mmol/L,2026-06-05', ',5,mmol/L,2026-06-05')).toEqual([
      ['lab-analyte-not-known', 2],
      ['lab-analyte-not-known', 3],
    ]);
    expect(codes('analyte,loinc,value,unit,date', 'sodium,2823-3,5,mmol/L,2026-06-05')).toEqual([['lab-analyte-not-known', 2]]);
    expect(codes('loinc,value,unit,date', '2777-1,1.9,mmol/L,2026-06-05')).toEqual([['lab-unit-not-known', 2]]);
  });

  it('[CLT-98] before and after dialysis and both limits are read; what contradicts a code is told', () => {
    const { value, issues } = read(
      'loinc;value;unit;date;timing;lower normal;upper normal',
      '2823-3;5.2;mmol/L;2026-06-05;pre;3.5;5.1',
      '2823-3;4.1;mmol/L;2026-06-05;after dialysis;;',
      '11064-3;18;mg/dL;2026-06-05;;;',
      '11064-3;19;mg/dL;2026-06-05;before HD;;',
      '2823-3;4.2;mmol/L;2026-06-05;midway;;',
      '2823-3;4.3;mmol/L;2026-06-05;;5.1;3.5',
    );
    expect(value.map(({ drawn, lowerNormal, upperNormal }) => [drawn, lowerNormal, upperNormal])).toEqual([
      ['before-dialysis', 3.5, 5.1],
      ['after-dialysis', undefined, undefined],
      ['after-dialysis', undefined, undefined],
    ]);
    expect(issues.map(({ code, place }) => [code, place.row])).toEqual([
      ['lab-drawn-in-conflict', 5],
      ['lab-drawn-in-conflict', 6],
      ['lab-upper-normal-not-read', 7],
    ]);
  });

  it('[FHR-7] nothing is guessed: a bound, a comma, a day in words, an impossible value', () => {
    expect(
      codes(
        heading.replaceAll(',', ';'),
        'potassium;<5;mmol/L;2026-06-05',
        'potassium;5,1;mmol/L;2026-06-05',
        'potassium;5.1;mmol/L;the 5th',
        'potassium;5.1;mmol/L;2026-02-30',
        'potassium;55;mmol/L;2026-06-05',
        'creatinine;132.6;mg/dL;2026-06-05',
        'albumin;3.9;mmol/L;2026-06-05',
      ),
    ).toEqual([
      ['lab-value-not-a-number', 2],
      ['lab-value-not-a-number', 3],
      ['lab-day-not-read', 4],
      ['lab-day-not-read', 5],
      ['lab-value-in-question', 6],
      ['lab-value-in-question', 7],
      ['lab-unit-not-known', 8],
    ]);
  });

  it('[FHR-9] the same result twice counts once', () => {
    const { value, issues } = read(heading, 'potassium,5.3,mmol/L,2026-06-05', 'potassium,5.3,mEq/L,2026-06-05');
    expect([value.length, issues.map(({ code }) => code)]).toEqual([1, ['lab-twice']]);
  });

  it('[FHR-6] a column is missing or there twice: a fault; one that nobody reads: an issue', () => {
    expect(() => read('analyte,unit,date')).toThrow('There is no column "value".');
    expect(() => read('analyte,value,unit')).toThrow('There is no column "date".');
    expect(() => read('name,value,unit,date')).toThrow('"analyte" or "loinc"');
    expect(() => read('analyte,Analyte,value,unit,date')).toThrow('are both analyte');
    expect(read(`${heading},Doctor`).issues).toMatchObject([{ code: 'column-not-known', found: 'Doctor' }]);
  });
});
