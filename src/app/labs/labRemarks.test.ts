import { describe, expect, test } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { labsFromTable } from './labsFromTable.ts';

/** Potassium 5.1 with one more column. */
const withColumn = (heading: string, words: string) =>
  labsFromTable(
    readTable(new TextEncoder().encode(`Test,Result,Unit,Date,${heading}\nPotassium,5.1,mmol/L,2026-11-13,${words}`)),
    '2026-11-30',
  );

describe('what stands beside a result', () => {
  test.each([
    'Nonhemolyzed',
    'Not grossly hemolyzed',
    'No evidence of hemolysis',
    'No visible hemolysis',
    'Hemolysis: none',
    'Hemolysis index 0',
    'Haemolysis absent',
  ])('[FHR-7] %s is no hemolysis', words => {
    expect(withColumn('Comment', words).value).toEqual([{ analyte: 'potassium', value: 5.1, unit: 'mmol/L', takenOn: '2026-11-13' }]);
  });

  test.each(['Slight hemolysis', 'Hemolysis index 2', 'Hemolysed +1'])('[FHR-7] %s is hemolysis', words => {
    expect(withColumn('Comment', words).value).toMatchObject([{ hemolyzed: true }]);
  });

  test.each(['P', 'X', 'W', 'I', 'In process'])('[FHR-7] with the status %s it is not final', status => {
    expect(withColumn('Status', status)).toMatchObject({ value: [], issues: [{ code: 'lab-not-final' }] });
  });

  test.each(['F', 'C', 'Final', 'Corrected'])('[FHR-6] with the status %s it is read', status => {
    expect(withColumn('Status', status).value).toHaveLength(1);
  });

  test.each(['U', '24H UR', 'Ur', 'Peritoneal'])('[FHR-7] %s is no blood', specimen => {
    expect(withColumn('Specimen', specimen)).toMatchObject({ value: [], issues: [{ code: 'lab-analyte-not-known' }] });
  });

  test.each(['after meal', 'before breakfast', 'not post'])('[FHR-7] "%s" says nothing about dialysis', drawn => {
    expect(withColumn('Drawn', drawn)).toMatchObject({ value: [], issues: [{ code: 'lab-drawn-in-conflict' }] });
  });

  test('[FHR-7] results below a line that names urine or dialysate are none of the blood, until another line follows', () => {
    const lines = ['Test,Result,Unit,Date', 'URINE CHEMISTRY,,,', 'Sodium,100,mmol/L,2026-11-13', 'Dialysate,,,'];
    const more = ['Potassium,2,mmol/L,2026-11-13', 'CHEMISTRY,,,', 'Potassium,5.1,mmol/L,2026-11-13'];
    const { value, issues } = labsFromTable(readTable(new TextEncoder().encode([...lines, ...more].join('\n'))), '2026-11-30');
    expect(value).toMatchObject([{ analyte: 'potassium', value: 5.1 }]);
    expect(issues).toMatchObject([
      { code: 'lab-analyte-not-known', found: 'Sodium of URINE CHEMISTRY' },
      { code: 'lab-analyte-not-known', found: 'Potassium of Dialysate' },
    ]);
  });

  test.each(['202611130730', '20261113073000', '20261113073000-0500'])('[FHR-6] %s is a day and a time, as HL7 writes it', day => {
    const text = `Test,Result,Unit,Date\nPotassium,5.1,mmol/L,${day}`;
    expect(labsFromTable(readTable(new TextEncoder().encode(text)), '2026-11-30').value).toMatchObject([
      { takenOn: '2026-11-13', takenAt: '07:30' },
    ]);
  });
});
