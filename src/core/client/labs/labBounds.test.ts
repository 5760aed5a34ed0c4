import { describe, expect, test } from 'vitest';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import type { Setting } from '../setting.ts';
import type { Analyte } from './analytes.ts';
import { labInCanonicalUnit, labInUnit, labQuestion, possibleReadings } from './labValue.ts';
import { drawnFromWords, isSameResult, type LabEntry, readLabResult } from './readLabResult.ts';
import { targetBands } from './targetBands.ts';
import { labTrends } from './trend.ts';

const open = Number.POSITIVE_INFINITY;

// Care rules 5, the column "plausible"; from prealbumin on own decision.
test.each<[Analyte, string, number, number]>([
  ['potassium', 'mmol/L', 1.5, 9.5],
  ['potassium', 'mEq/L', 1.5, 9.5],
  ['sodium', 'mmol/L', 100, 180],
  ['phosphate', 'mmol/L', 0.2, 4],
  ['phosphate', 'mg/dL', 0.6, 15],
  ['calcium', 'mmol/L', 1.2, 4],
  ['calcium', 'mg/dL', 4.8, 16],
  ['magnesium', 'mmol/L', 0.2, 3],
  ['magnesium', 'mg/dL', 0.5, 7.3],
  ['glucose', 'mmol/L', 1.5, 60],
  ['glucose', 'mg/dL', 27, 1080],
  ['creatinine', 'umol/L', 20, 2500],
  ['creatinine', 'mg/dL', 0.2, 28],
  ['ureaNitrogen', 'mg/dL', 2, 250],
  ['ureaNitrogen', 'mmol/L', 1, 90],
  ['pth', 'pg/mL', 1, 3500],
  ['pth', 'pmol/L', 0.1, 370],
  ['ferritin', 'ng/mL', 1, 5000],
  ['urineAcr', 'mg/g', 0, 20_000],
  ['urineAcr', 'mg/mmol', 0, 2300],
  ['spKtV', '{ratio}', 0.3, 3.5],
  ['weeklyKtV', '{ratio}', 0.5, 5],
  ['albumin', 'g/L', 10, 60],
  ['albumin', 'g/dL', 1, 6],
  ['bicarbonate', 'mmol/L', 5, 45],
  ['hba1c', '%', 3.5, 18],
  ['hba1c', 'mmol/mol', 15, 170],
  ['hemoglobin', 'g/L', 40, 200],
  ['hemoglobin', 'g/dL', 4, 20],
  ['prealbumin', 'mg/dL', 1, 80],
  ['chloride', 'mmol/L', 50, 170],
  ['cholesterol', 'mg/dL', 30, 1000],
  ['egfr', 'mL/min/{1.73_m2}', 1, 200],
  ['transferrinSaturation', '%', 1, 100],
  ['cReactiveProtein', 'mg/L', 0, 600],
  ['urate', 'mg/dL', 0.5, 25],
  ['vitaminD25', 'ng/mL', 1, 300],
  ['ionizedCalcium', 'mmol/L', 0.4, 2.5],
  ['urineSodium', 'mmol/(24.h)', 0, 800],
  ['urinePotassium', 'mmol/(24.h)', 0, 400],
  ['urineUreaNitrogen', 'g/(24.h)', 0, 60],
  ['ureaReduction', '%', 5, 98],
  ['proteinCatabolicRate', 'g/kg/d', 0.1, 4],
])('[CLT-90] %s in %s can be %d to %d', (analyte, unit, lo, hi) => {
  const kindOf = (value: number) => labInCanonicalUnit(analyte, value, unit).kind;
  expect([kindOf(lo), kindOf(hi)]).toEqual(['computed', 'computed']);
  expect([kindOf(lo - 0.001), kindOf(hi + 0.001)]).toEqual(['refused', 'refused']);
});

// Care rules 5, the column "ask".
test.each<[Analyte, string, Setting, asked: number, plain: number]>([
  ['phosphate', 'mmol/L', 'hemodialysis', 2.51, 2.5],
  ['phosphate', 'mg/dL', 'hemodialysis', 1.99, 2],
  ['calcium', 'mmol/L', 'hemodialysis', 1.4, 1.41],
  ['magnesium', 'mg/dL', 'hemodialysis', 1.1, 1.11],
  ['magnesium', 'mg/dL', 'hemodialysis', 0.6, 0.59],
  ['glucose', 'mg/dL', 'hemodialysis', 39.9, 40],
  ['glucose', 'mmol/L', 'hemodialysis', 33.1, 33],
  ['ureaNitrogen', 'mg/dL', 'hemodialysis', 9.9, 10],
  ['ureaNitrogen', 'mmol/L', 'hemodialysis', 60.1, 60],
  ['pth', 'pg/mL', 'hemodialysis', 9.9, 10],
  ['urineAcr', 'mg/mmol', 'ckd-not-on-dialysis', 800.1, 800],
  ['weeklyKtV', '{ratio}', 'hemodialysis', 1.59, 1.6],
])('[CLT-90] %s in %s, %s: %d is asked about, %d is not', (analyte, unit, setting, asked, plain) => {
  expect(labQuestion(analyte, asked, unit, setting)).toMatch(/is unusual: was/);
  expect(labQuestion(analyte, plain, unit, setting)).toBeUndefined();
});

describe('a value that cannot be', () => {
  const refusal = (analyte: Analyte, value: number, unit: string) => {
    const read = labInCanonicalUnit(analyte, value, unit);
    if (read.kind === 'computed') throw new Error(`${read.value} is possible`);
    return [read.why, read.told];
  };

  test('[CLT-90] is no question; potassium from 35 to 60 is a missing decimal point', () => {
    expect(labQuestion('phosphate', 0.5, 'mg/dL', 'hemodialysis')).toBeUndefined();
    const whys = [34.9, 35, 60, 60.1].map(value => refusal('potassium', value, 'mmol/L')[0]);
    expect(whys).toEqual(['impossible', 'unit-in-question', 'unit-in-question', 'impossible']);
  });

  test('[CLT-90] is told with what is expected in its own unit', () => {
    expect(refusal('phosphate', 0.1, 'mmol/L')).toEqual(['impossible', 'phosphate 0.1 mmol/L cannot be: expected 0.2 to 4 mmol/L.']);
    expect(refusal('potassium', Number.NaN, 'mmol/L')).toEqual(['not-a-number', 'potassium is not a number.']);
    expect(labInUnit('potassium', 5, 'mg/dL')).toMatchObject({ kind: 'refused', told: 'potassium does not come in mg/dL.' });
  });

  test('[CLT-92] may mean nothing else where its setting does not ask', () => {
    expect(possibleReadings('ureaNitrogen', 8, 'mg/dL', 'ckd-not-on-dialysis')).toEqual([8]);
    expect(possibleReadings('ureaNitrogen', 8, 'mg/dL', 'hemodialysis')).toHaveLength(2);
  });
});

describe('a result of a file', () => {
  const entry: LabEntry = { analyte: 'potassium', value: 5.2, unit: 'mmol/L', day: '2026-06-05' };
  const read = (more: Partial<LabEntry> = {}) => readLabResult({ ...entry, ...more }, { heading: 'line 2' });
  const plain = { analyte: 'potassium', value: 5.2, unit: 'mmol/L', takenOn: '2026-06-05' };

  test('[CLT-98] has what the file says, and nothing else', () => {
    expect(read()).toStrictEqual(plain);
    const all = { lowerNormal: 0, upperNormal: 5.1, drawn: 'after-dialysis' } as const;
    expect(read({ ...all, time: '07:30', hemolyzed: true })).toStrictEqual({ ...plain, ...all, takenAt: '07:30', hemolyzed: true });
    expect(read({ lowerNormal: 3.5 })).toStrictEqual({ ...plain, lowerNormal: 3.5 });
  });

  test.each<[Partial<LabEntry>, code: string, found: string]>([
    [{ day: '' }, 'lab-day-not-read', 'no day'],
    [{ day: '5.6.2026' }, 'lab-day-not-read', '5.6.2026'],
    [{ time: '7:30' }, 'lab-time-not-read', '7:30'],
    [{ time: '24:00' }, 'lab-time-not-read', '24:00'],
    [{ upperNormal: 51 }, 'lab-upper-normal-not-read', 'upper normal 51 mmol/L'],
    [{ lowerNormal: -1 }, 'lab-upper-normal-not-read', 'limits -1 to none mmol/L'],
    [{ lowerNormal: 5, upperNormal: 5 }, 'lab-upper-normal-not-read', 'limits 5 to 5 mmol/L'],
    [{ lowerNormal: 5.5, upperNormal: 5 }, 'lab-upper-normal-not-read', 'limits 5.5 to 5 mmol/L'],
  ])('[CLT-98] %o is left out and said: %s', (more, code, found) => {
    expect(read(more)).toMatchObject({ code, found, place: { heading: 'line 2' } });
  });

  test('[CLT-98] before or after dialysis by its words, and neither where they say both', () => {
    const words = ['pre HD', 'before dialysis', 'post', 'after dialysis', 'pre and post', 'serum', ''];
    expect(words.map(drawnFromWords)).toEqual([
      ...['before-dialysis', 'before-dialysis', 'after-dialysis', 'after-dialysis'],
      ...[undefined, undefined, undefined],
    ]);
  });

  test('[CLT-98] is the same in another unit, and another one of another day, hour or analyte', () => {
    const one = lab('phosphate', 4.65, 'mg/dL', '2026-06-05', { takenAt: '07:30' });
    expect(isSameResult(one, one)).toBe(true);
    expect(isSameResult(lab('potassium', 5.2, 'mmol/L'), lab('potassium', 5.2, 'mEq/L'))).toBe(true);
    expect(isSameResult(lab('potassium', 5.2, 'mmol/L'), lab('potassium', 5.3, 'mmol/L'))).toBe(false);
    expect(isSameResult(one, { ...one, takenOn: '2026-06-06' })).toBe(false);
    expect(isSameResult(one, { ...one, takenAt: '08:30' })).toBe(false);
    expect(isSameResult(lab('sodium', 105, 'mmol/L'), lab('chloride', 105, 'mmol/L'))).toBe(false);
    expect(isSameResult(lab('potassium', 5, 'drops'), lab('potassium', 5, 'drops'))).toBe(false);
  });
});

describe('where results are wished to be (facts 4.2)', () => {
  const bandsOf = (setting: Setting, analyte: Analyte) => targetBands(analyte, setting).map(({ range }) => [range.lo, range.hi]);
  const phosphate = [
    [2.5, 4.5],
    [3.5, 5.5],
  ];
  test.each<[Setting, Partial<Record<Analyte, readonly (readonly number[])[]>>]>([
    [
      'ckd-not-on-dialysis',
      {
        potassium: [],
        phosphate: [
          [2.5, 4.5],
          [2.7, 4.6],
        ],
        correctedCalcium: [],
        pth: [],
        bicarbonate: [
          [24, 26],
          [18, open],
        ],
        albumin: [[3.8, open]],
        hba1c: [[0, 8]],
        glucose: [[80, 130]],
        hemoglobin: [[10, 11.5]],
        ferritin: [[100, open]],
        transferrinSaturation: [[20, open]],
      },
    ],
    [
      'hemodialysis',
      {
        potassium: [[4.6, 5.3]],
        phosphate,
        correctedCalcium: [[8.4, 9.5]],
        pth: [[150, 300]],
        bicarbonate: [
          [22, open],
          [18, 24],
        ],
        albumin: [[4, open]],
        ureaNitrogen: [[60, 80]],
        hba1c: [[7, 8]],
        hemoglobin: [[10, 11.5]],
        ferritin: [[200, 500]],
        transferrinSaturation: [[20, 40]],
        spKtV: [
          [1.2, open],
          [1.4, open],
        ],
        ureaReduction: [
          [65, open],
          [70, open],
        ],
      },
    ],
    [
      'peritoneal-dialysis',
      {
        potassium: [[3.5, 5]],
        phosphate,
        correctedCalcium: [[8.4, 9.5]],
        pth: [[150, 300]],
        bicarbonate: [[24, 26]],
        albumin: [[3.8, open]],
        ureaNitrogen: [[60, 80]],
        hemoglobin: [[10, 11.5]],
        ferritin: [[100, open]],
        transferrinSaturation: [[20, open]],
      },
    ],
  ])('[NOTE-11] %s', (setting, bands) => {
    expect(Object.fromEntries(Object.keys(bands).map(analyte => [analyte, bandsOf(setting, analyte as Analyte)]))).toEqual(bands);
  });

  test('[NOTE-11] PTH by the newest upper normal that a laboratory sent; points in order, with an hour where there is one', () => {
    const pth = (value: number, on: string, more: Parameters<typeof lab>[4] = {}) => lab('pth', value, 'pg/mL', on, more);
    const client = clientWith({
      treatment: { setting: 'hemodialysis', place: 'in-center' },
      labs: [
        pth(300, '2026-06-05', { takenAt: '18:00' }),
        pth(310, '2026-06-05', { takenAt: '07:30' }),
        pth(200, '2026-03-01', { upperNormal: 65 }),
        pth(250, '2026-05-01', { upperNormal: 60 }),
        pth(260, '2026-05-02'),
      ],
    });
    const { points, bands } = labTrends([client], today)[0]!;
    expect(points.map(({ value }) => value)).toEqual([200, 250, 260, 310, 300]);
    expect(points[2]).toMatchObject({ takenOn: '2026-05-02', value: 260, hemolyzed: false });
    expect(bands.map(({ range }) => range)).toEqual([
      { lo: 120, hi: 540 },
      { lo: 150, hi: 300 },
    ]);
  });
});
