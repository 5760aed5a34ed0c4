import { describe, expect, test } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { labsFromTable } from './labsFromTable.ts';

// Tables as different laboratories, dialysis programs and people write them (invented; the layouts are common practice, no source).

const read = (lines: readonly string[], order?: 'month-first' | 'day-first') =>
  labsFromTable(readTable(new TextEncoder().encode(lines.join('\n'))), '2026-11-30', order);
const short = (lines: readonly string[]) =>
  read(lines).value.map(({ analyte, value, unit, takenOn, takenAt }) =>
    [analyte, value, unit, takenOn, takenAt].filter(one => one !== undefined).join(' '),
  );

describe('results as laboratories write them', () => {
  test('[FHR-12] test, result, flag, units, reference range, collected, in any order, in capitals', () => {
    const { value, issues, guessedOrder, person } = read([
      'COLLECTED,TEST NAME,FLAG,RESULT,REFERENCE RANGE,UNITS',
      '11/13/2026 7:30 AM,POTASSIUM,H,5.9 H,3.5-5.1,MMOL/L',
      '11/13/2026 7:30 AM,PHOSPHORUS,H,6.2*,2.5 - 4.5 mg/dL,MG/DL',
      '11/13/2026 7:30 AM,"ALBUMIN, SERUM",L,3.1,>=3.5,G/DL',
      '11/13/2026 7:30 AM,"PTH, INTACT",,"1,412.5",15 to 65,PG/ML',
      '11/03/2026,CO2,,21,22-29,mEq/L',
      '11/03/2026,ALK PHOS,,88,,U/L',
    ]);
    expect(value).toEqual([
      { analyte: 'potassium', value: 5.9, unit: 'mmol/L', takenOn: '2026-11-13', takenAt: '07:30', lowerNormal: 3.5, upperNormal: 5.1 },
      { analyte: 'phosphate', value: 6.2, unit: 'mg/dL', takenOn: '2026-11-13', takenAt: '07:30', lowerNormal: 2.5, upperNormal: 4.5 },
      { analyte: 'albumin', value: 3.1, unit: 'g/dL', takenOn: '2026-11-13', takenAt: '07:30', lowerNormal: 3.5 },
      { analyte: 'pth', value: 1412.5, unit: 'pg/mL', takenOn: '2026-11-13', takenAt: '07:30', lowerNormal: 15, upperNormal: 65 },
      { analyte: 'bicarbonate', value: 21, unit: 'mEq/L', takenOn: '2026-11-03', lowerNormal: 22, upperNormal: 29 },
    ]);
    expect(issues).toMatchObject([{ code: 'lab-analyte-not-known', place: { row: 7 }, found: 'ALK PHOS' }]);
    expect([guessedOrder, person]).toEqual([undefined, {}]);
  });

  test('[FHR-12] titles above the headings, with whose results they are', () => {
    const { value, person, issues } = read([
      'Mill Pond Dialysis,,,',
      'Patient: Ines Orla  DOB: 03/02/1958,,,',
      ',,,',
      'Component,Value,Unit,Date',
      'K+,5.2,mEq/L,11/13/2026',
    ]);
    expect([value.length, issues, person]).toEqual([1, [], { name: 'Ines Orla', bornOn: '1958-03-02' }]);
  });

  test('[FHR-12] days side by side, as a trend is printed', () => {
    expect(
      short(['Test;Units;11/13/2026;10/09/2026;09/11/2026', 'Potassium;mEq/L;5.9;5.1;', 'Phos;mg/dL;6.2;;5.8', 'Comment;;drawn early;;']),
    ).toEqual([
      'potassium 5.9 mEq/L 2026-11-13',
      'potassium 5.1 mEq/L 2026-10-09',
      'phosphate 6.2 mg/dL 2026-11-13',
      'phosphate 5.8 mg/dL 2026-09-11',
    ]);
  });

  test('[FHR-12] analytes side by side with their units, as a spreadsheet is kept', () => {
    const { value, issues } = read([
      'Date,K (mEq/L),"Phosphorus, mg/dL",Albumin [g/dL],Pre BUN (mg/dL),HbA1c (%),Weight',
      '13-Nov-26,5.9,6.2,3.1,70,,71',
      '9-Oct-26,,5.8,,,7.1,70',
    ]);
    expect(value.map(({ analyte, value: one, unit, takenOn, drawn }) => [analyte, one, unit, takenOn, drawn])).toEqual([
      ['potassium', 5.9, 'mEq/L', '2026-11-13', undefined],
      ['phosphate', 6.2, 'mg/dL', '2026-11-13', undefined],
      ['albumin', 3.1, 'g/dL', '2026-11-13', undefined],
      ['ureaNitrogen', 70, 'mg/dL', '2026-11-13', 'before-dialysis'],
      ['phosphate', 5.8, 'mg/dL', '2026-10-09', undefined],
      ['hba1c', 7.1, '%', '2026-10-09', undefined],
    ]);
    expect(issues).toMatchObject([{ code: 'column-not-known', found: 'Weight' }]);
  });

  test('[FHR-7] analytes side by side without a unit are left out and named, each at its place', () => {
    const { value, issues } = read(['Date,K,Phos (mg/dL)', '2026-11-13,5.9,6.2']);
    expect(value.map(({ analyte }) => analyte)).toEqual(['phosphate']);
    expect(issues).toMatchObject([{ code: 'lab-unit-missing', place: { row: 2, heading: 'K' } }]);
  });

  test('[FHR-12] the unit beside the figure, LOINC long names, a report day where no other stands', () => {
    expect(
      short([
        'Observation,Value,Result Date',
        'Potassium [Moles/volume] in Serum or Plasma,5.9 mmol/L,2026-11-13',
        'Phosphate [Mass/volume] in Serum or Plasma,6.2mg/dL,2026-11-13',
        'spKt/V,1.42,2026-11-13',
      ]),
    ).toEqual(['potassium 5.9 mmol/L 2026-11-13', 'phosphate 6.2 mg/dL 2026-11-13', 'spKtV 1.42 {ratio} 2026-11-13']);
  });

  test('[FHR-12] a day that could be two: the month first, which is said; the other order when that is asked for', () => {
    const lines = ['test,result,unit,date', 'K,5.2,mmol/L,11/03/2026', 'K,5.1,mmol/L,10/06/2026'];
    expect([read(lines).value[0]?.takenOn, read(lines).guessedOrder]).toEqual([
      '2026-11-03',
      { order: 'month-first', example: '11/03/2026' },
    ]);
    expect([read(lines, 'day-first').value[0]?.takenOn, read(lines, 'day-first').guessedOrder?.order]).toEqual(['2026-03-11', 'day-first']);
    // One that is plain settles all of them, and so does a day that is not yet.
    expect(read([...lines, 'K,5.0,mmol/L,25/09/2026']).value.map(({ takenOn }) => takenOn)).toEqual([
      '2026-03-11',
      '2026-06-10',
      '2026-09-25',
    ]);
    const settled = read(['test,result,unit,date', 'K,5.2,mmol/L,12/11/2026', 'K,5.1,mmol/L,05/11/2026']);
    expect([settled.value.map(({ takenOn }) => takenOn), settled.guessedOrder]).toEqual([['2026-11-12', '2026-11-05'], undefined]);
  });

  test.each(['11/13/59', '12/13/26', '2027-01-01'])('[FHR-7] a day that is not yet is left out: %s', day => {
    const { value, issues } = read(['test,result,unit,date', `K,5.2,mmol/L,${day}`]);
    expect([value, issues.map(({ code }) => code)]).toEqual([[], ['lab-day-not-read']]);
  });

  test.each([
    ['Non-hemolyzed', undefined],
    ['Negative', undefined],
    ['N/A', undefined],
    ['-', undefined],
    ['hemolyzed', true],
    ['Yes (1+)', true],
    ['+', true],
    ['Slightly haemolysed', true],
  ])('[FHR-12] in the column of hemolysis %s', (said, hemolyzed) => {
    expect(read(['test,result,unit,date,hemolyzed', `K,5.2,mmol/L,2026-11-13,${said}`]).value).toMatchObject([
      { value: 5.2, ...(hemolyzed ? { hemolyzed } : {}) },
    ]);
    expect(read(['test,result,unit,date,hemolyzed', `K,5.2,mmol/L,2026-11-13,${said}`]).value[0]?.hemolyzed).toBe(hemolyzed);
  });

  test('[FHR-7] days of both orders in one file: only those that are one day are read', () => {
    const { value, issues } = read([
      'test,result,unit,date',
      'K,5.2,mmol/L,11/13/2026',
      'K,5.1,mmol/L,14/10/2026',
      'K,5.0,mmol/L,03/04/2026',
    ]);
    expect(value.map(({ takenOn }) => takenOn)).toEqual(['2026-11-13', '2026-10-14']);
    expect(issues).toMatchObject([{ code: 'lab-day-not-read', place: { row: 4 } }]);
  });

  test('[FHR-8] results of two people are refused as a whole; a name written in two ways of case is one', () => {
    const heads = 'Patient Name,DOB,Test,Result,Units,Date';
    const two = read([heads, '"Orla, Ines",03/02/1958,K,5.2,mmol/L,2026-11-13', '"Sand, Lea",03/02/1958,K,6.2,mmol/L,2026-11-13']);
    expect([two.value, two.issues.map(({ code }) => code), two.person]).toEqual([[], ['lab-more-than-one-client'], {}]);
    const one = read([heads, '"Orla, Ines",03/13/1958,K,5.2,mmol/L,2026-11-13', '"ORLA,  INES",03/13/1958,Phos,6.2,mg/dL,2026-11-13']);
    expect([one.value.length, one.person.bornOn]).toEqual([2, '1958-03-13']);
  });

  test('[FHR-12] urine under the name of a result of the blood, what is not final, and a hemolyzed sample', () => {
    const { value, issues } = read([
      'Test,Result,Units,Date,Specimen,Status,Comments',
      'Potassium,45,mmol/L,2026-11-13,Urine,Final,',
      'Potassium,5.9,mmol/L,2026-11-13,Serum,Preliminary,',
      'Potassium,6.4,mmol/L,2026-11-12,Serum,Final,Specimen grossly hemolyzed',
      'Potassium,5.4,mmol/L,2026-11-11,Serum,Corrected,not hemolyzed',
    ]);
    expect(value.map(({ value: one, hemolyzed }) => [one, hemolyzed])).toEqual([
      [6.4, true],
      [5.4, undefined],
    ]);
    expect(issues.map(({ code, place }) => [code, place.row])).toEqual([
      ['lab-analyte-not-known', 2],
      ['lab-not-final', 3],
    ]);
  });

  test.each([
    ['<5', 'mg/L'],
    ['see note', 'mg/L'],
    ['5.2 6.1', 'mg/L'],
    ['5.2/6.1', 'mg/L'],
    ['-5', 'mg/L'],
    ['5e3', 'mg/L'],
    ['', 'mg/L'],
    ['> 100 H', 'mg/L'],
  ])('[FHR-7] %j is no figure', (value, unit) => {
    const { value: labs, issues } = read(['test;result;unit;date', `CRP;${value};${unit};2026-11-13`]);
    expect([labs, issues.map(({ code }) => code)]).toEqual([[], [expect.stringMatching(/^lab-(?:value-not-a-number|unit-not-known)$/)]]);
  });

  test.each([
    ['4.9 (H)', 4.9],
    ['L 3.1', 3.1],
    ['5.9 HH', 5.9],
    ['5.9 critical', 5.9],
  ])('[FHR-12] the mark of a laboratory beside a figure is no part of it: %j', (value, figure) => {
    expect(read(['test,result,unit,date', `K,${value},mmol/L,2026-11-13`]).value).toMatchObject([{ value: figure }]);
  });
});

describe('figures and units as they are written elsewhere', () => {
  test('[FHR-12] a table with decimal commas is read with them, its point parts thousands', () => {
    const lines = [
      'Date;Test;Result;Units;Range',
      '13.11.2026;K;5,9;mmol/L;3,5-5,1',
      '13.11.2026;PTH;1.412;pg/mL;15-65',
      '13.11.2026;Albumin;3,1 L;g/dL;',
    ];
    expect(read(lines).value).toEqual([
      { analyte: 'potassium', value: 5.9, unit: 'mmol/L', takenOn: '2026-11-13', lowerNormal: 3.5, upperNormal: 5.1 },
      { analyte: 'pth', value: 1412, unit: 'pg/mL', takenOn: '2026-11-13', lowerNormal: 15, upperNormal: 65 },
      { analyte: 'albumin', value: 3.1, unit: 'g/dL', takenOn: '2026-11-13' },
    ]);
  });

  test('[FHR-12] a comma before three digits parts thousands where nothing shows otherwise; of a table that shows both nothing with a comma is read', () => {
    expect(short(['Date,Test,Result,Units', '11/13/2026,PTH,"1,250",pg/mL', '11/13/2026,Ferritin,"1,004.5",ng/mL'])).toEqual([
      'pth 1250 pg/mL 2026-11-13',
      'ferritin 1004.5 ng/mL 2026-11-13',
    ]);
    const both = read(['Date;Test;Result;Units', '11/13/2026;K;5.9;mmol/L', '11/13/2026;Phos;6,2;mg/dL']);
    expect([both.value.map(({ analyte }) => analyte), both.issues]).toMatchObject([['potassium'], [{ code: 'lab-value-not-a-number' }]]);
  });

  test('[FHR-12] a row of units below the headings of analytes; a row of figures is none', () => {
    expect(short(['Date,K,Phos,CRP', ',mEq/L,mg/dL,', '11/13/2026,5.9,6.2,1'])).toEqual([
      'potassium 5.9 mEq/L 2026-11-13',
      'phosphate 6.2 mg/dL 2026-11-13',
    ]);
    expect(read(['Date,K (mEq/L),Phos', '11/13/2026,5.9,pending', '11/14/2026,5.1,6.2']).value).toHaveLength(2);
  });

  test.each(['5.9 CH', 'C 5.9', '5.9 HC', '5.9 C'])('[FHR-12] a critical mark is no part of the figure: %s', words => {
    expect(short(['Date,Test,Result,Units', `11/13/2026,K,${words},mEq/L`])).toEqual(['potassium 5.9 mEq/L 2026-11-13']);
  });
});

describe('what would be read wrongly', () => {
  test.each([
    'Urinalysis',
    'UA',
    '24 hour collection',
    '24h',
    'U24',
    'Cath',
    'Midstream',
    'Spot',
    'Drain bag',
    'PET 4 hr',
    '4 h dwell',
    'Orina',
  ])('[FHR-7] a sample that is none of blood, in its column or above its group: %s', sample => {
    const beside = read(['Date,Specimen,Test,Result,Units', `11/13/2026,${sample},Potassium,8.5,mmol/L`]);
    const above = read(['Date,Test,Result,Units', `${sample},,,`, '11/13/2026,Sodium,110,mmol/L']);
    expect([beside.value, above.value]).toEqual([[], []]);
    expect([...beside.issues, ...above.issues].map(({ code }) => code)).toEqual(['lab-analyte-not-known', 'lab-analyte-not-known']);
  });

  test('[FHR-7] the samples of blood are read: serum, plasma, whole blood, none', () => {
    const lines = ['Serum', 'Plasma', 'Whole blood', ''].map((sample, at) => `11/1${at}/2026,${sample},Potassium,4.5,mmol/L`);
    expect(read(['Date,Specimen,Test,Result,Units', ...lines]).value).toHaveLength(4);
  });

  test('[FHR-7] a range in another unit than the result says nothing', () => {
    const { value } = read([
      'Date,Test,Result,Units,Reference range',
      '11/13/2026,Phosphorus,5.0,mg/dL,0.8-1.5 mmol/L',
      '11/13/2026,Potassium,5.0,mmol/L,3.5-5.1 mEq/L',
      '11/13/2026,Albumin,3.9 g/dL,,3.5-5.0 g/dL',
    ]);
    expect(value.map(({ analyte, upperNormal }) => [analyte, upperNormal])).toEqual([
      ['phosphate', undefined],
      ['potassium', undefined],
      ['albumin', 5],
    ]);
  });

  test('[FHR-12] three digits behind the only mark of a table are not read; words with figures in them tell nothing', () => {
    const alone = read(['Date,Test,Result,Units', '11/13/2026,Ferritin,1.250,ng/mL']);
    expect([alone.value, alone.issues.map(({ code }) => code)]).toEqual([[], ['lab-value-not-a-number']]);
    const { value } = read([
      'Date,Test,Result,Units,Reference range',
      '11/13/2026,PTH,"1,250",pg/mL,"see notes 1,2"',
      '11/13/2026,Sodium,138,mmol/L,',
    ]);
    expect(value.map(({ value: one }) => one)).toEqual([1250, 138]);
    // Beside a figure with a point before two digits it is what it looks like.
    expect(short(['Date,Test,Result,Units', '11/13/2026,K,4.25,mmol/L', '11/13/2026,Ferritin,1.250,ng/mL'])[1]).toBe(
      'ferritin 1.25 ng/mL 2026-11-13',
    );
  });

  test.each([
    ['Not grossly hemolyzed; slight hemolysis present', true],
    ['No hemolysis. Repeat: hemolyzed', true],
    ['hemólisis leve', true],
    ['sample lysed', true],
    ['No visible hemolysis', undefined],
    ['Hemolysis index: 0', undefined],
  ])('[FHR-12] what a remark denies and what it says beside: %s', (remark, hemolyzed) => {
    expect(read(['Date,Test,Result,Units,Comment', `11/13/2026,K,6.4,mmol/L,${remark}`]).value[0]?.hemolyzed).toBe(hemolyzed);
  });
});
