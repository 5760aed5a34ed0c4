import { describe, expect, it } from 'vitest';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { settings } from '../setting.ts';
import { analyteKeys } from './analytes.ts';
import { targetBands } from './targetBands.ts';
import { labTrends } from './trend.ts';

const ofAnalyte = (trends: ReturnType<typeof labTrends>, wanted: string) => trends.find(({ analyte }) => analyte === wanted);
const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;

describe('trends', () => {
  it('[NOTE-10] values of all assessments in one unit, oldest first, each once', () => {
    const earlier = clientWith({ on: '2026-03-02', labs: [lab('phosphate', 1.6145, 'mmol/L', '2026-03-01')] });
    const newest = clientWith({
      ...hemodialysis,
      labs: [
        lab('phosphate', 5.9, 'mg/dL', '2026-06-05'),
        lab('phosphate', 5, 'mg/dL', '2026-03-01'),
        lab('phosphate', 5.2, 'mg/dL', '2026-06-05', { takenAt: '18:00', hemolyzed: true }),
        lab('potassium', 5, 'mmol/L'),
      ],
    });
    // 1 mmol/L is 1 / 0.3229 mg/dL: facts sheet, section 4.1.
    expect(ofAnalyte(labTrends([newest, earlier], today), 'phosphate')).toMatchObject({
      unit: 'mg/dL',
      points: [
        { takenOn: '2026-03-01', value: 5, hemolyzed: false },
        { takenOn: '2026-06-05', value: 5.9, hemolyzed: false },
        { takenOn: '2026-06-05', takenAt: '18:00', value: 5.2, hemolyzed: true },
      ],
    });
  });

  it('[NOTE-10] a result that cannot be, or lies in the future, is no point; no result is no trend', () => {
    const client = clientWith({ labs: [lab('potassium', 55, 'mmol/L'), lab('potassium', 5, 'mmol/L', '2027-01-01')] });
    expect(labTrends([client], today)).toEqual([]);
    expect(labTrends([], today)).toEqual([]);
  });

  it('[NOTE-11] the band is that of the setting, several where sources differ (facts sheet, section 4.2)', () => {
    const rangesOf = (...of: Parameters<typeof targetBands>) => targetBands(...of).map(({ range: { lo, hi } }) => [lo, hi]);
    expect(rangesOf('potassium', 'hemodialysis')).toEqual([[4.6, 5.3]]);
    expect(rangesOf('potassium', 'peritoneal-dialysis')).toEqual([[3.5, 5]]);
    expect(rangesOf('potassium', 'ckd-not-on-dialysis')).toEqual([]);
    expect(rangesOf('phosphate', 'hemodialysis')).toEqual([
      [2.5, 4.5],
      [3.5, 5.5],
    ]);
    expect(rangesOf('spKtV', 'hemodialysis')).toEqual([
      [1.2, Number.POSITIVE_INFINITY],
      [1.4, Number.POSITIVE_INFINITY],
    ]);
    // 130-585 pg/mL if the upper normal is 65.
    expect(rangesOf('pth', 'hemodialysis', 65)[0]).toEqual([130, 585]);
    expect(rangesOf('pth', 'hemodialysis')).toEqual([[150, 300]]);
  });

  it('[NOTE-11] every band has words and a source; nothing is banded after a transplant', () => {
    for (const setting of settings) {
      for (const analyte of analyteKeys) {
        const bands = targetBands(analyte, setting, 65);
        if (setting === 'transplant') expect(bands).toEqual([]);
        for (const { says, source } of bands) expect([says, source.text]).not.toContain('');
      }
    }
  });
});
