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
});
