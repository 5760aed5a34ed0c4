import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { cautionsFor } from './cautions.ts';

const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;
const peritoneal = { setting: 'peritoneal-dialysis', method: 'capd' } as const;

function because(id: string, more: Partial<Assessment>): string | undefined {
  return cautionsFor(checkAssessment(clientWith(more), today).facts).find(one => one.id === id)?.because;
}
const of = (analyte: Analyte, unit: string, ...values: readonly number[]) => ({ labs: values.map(value => lab(analyte, value, unit)) });

describe('a salt substitute on record is told first when potassium is above range (care rules 4)', () => {
  const substitute: Partial<Assessment> = { supplements: ['salt-substitute'] };
  const told = (more: Partial<Assessment>) => because('salt-substitute-on-record', more);
  const marked = (value: number, upperNormal?: number) => ({
    labs: [lab('potassium', value, 'mmol/L', '2026-06-05', { hemolyzed: true, ...(upperNormal === undefined ? {} : { upperNormal }) })],
  });

  test('[CLT-31] by what is on record, once or twice above', () => {
    const high = of('potassium', 'mmol/L', 5.8);
    expect(told({ ...high, ...substitute })).toBe('salt substitute; potassium 5.8 mmol/L (on 2026-06-05, 10 days old)');
    expect(told({ ...high, medicines: ['potassium-salt'] })).toMatch(/^potassium salt; /);
    expect(told({ ...high, ...substitute, medicines: ['potassium-salt'] })).toMatch(/^salt substitute, potassium salt; /);
    expect(told(high)).toBeUndefined();
    expect(told({ ...substitute, ...of('potassium', 'mmol/L', 5.2) })).toMatch(/5\.2/);
  });

  test('[CLT-31] not in range, on hemodialysis to 5.5, nor without a result', () => {
    expect(told({ ...substitute, ...of('potassium', 'mmol/L', 4.9) })).toBeUndefined();
    expect(told({ ...substitute, ...hemodialysis, ...of('potassium', 'mmol/L', 5.2) })).toBeUndefined();
    expect(told(substitute)).toBeUndefined();
  });

  test('[CLT-31] a marked one sets nothing, and is told where it is above the laboratory’s own end or 5.0', () => {
    expect(told({ ...substitute, ...marked(5.1) })).toMatch(/5\.1.*hemolyzed/);
    expect(told({ ...substitute, ...marked(5) })).toBeUndefined();
    expect(told({ ...substitute, ...marked(5.1, 5.2) })).toBeUndefined();
  });
});

describe('what the client’s own record raises', () => {
  test.each([
    ['bicarbonate-22', 'bicarbonate', 'mmol/L', 21.9, 22], // care rules 4: under 22
    ['hba1c-10', 'hba1c', '%', 10.1, 10], // care rules 4: over 10
  ] as const)('[CLT-31] %s', (id, analyte, unit, beyond, within) => {
    expect(because(id, of(analyte, unit, beyond))).toContain(String(beyond));
    expect(because(id, of(analyte, unit, within))).toBeUndefined();
    expect(because(id, {})).toBeUndefined();
  });

  test('[CLT-31] of two bicarbonates of a day the lower is told', () => {
    expect(because('bicarbonate-22', of('bicarbonate', 'mmol/L', 23, 21))).toContain('21');
  });

  test('[CLT-31] the stage in question, by its day and rate', () => {
    const differing: Partial<Assessment> = {
      stage: { value: 'G4', on: '2026-01-01' },
      labs: [lab('egfr', 50, 'mL/min/{1.73_m2}', '2026-06-01')],
    };
    expect(because('stage-in-question', differing)).toContain('the eGFR of 2026-06-01 is 50, G3a');
    expect(because('stage-in-question', { ...differing, labs: [] })).toBeUndefined();
  });

  // 62 kg after 68 kg: 6 / 68 = 8.8 %; after 66 and 70 kg: 6.1 % and 11.4 %. Care rules 3: whether it was wanted is asked.
  test.each([
    [[68, 80], undefined, '8.8'],
    [[66, 80, 70, 170], undefined, '11.4'],
    [[70, 170], undefined, '11.4'],
    [[], { percent3Months: 6 }, '6.0'],
    [[68, 80], { cause: 'unintended' }, undefined],
    [[68, 80], { cause: 'wanted' }, undefined],
  ] as const)('[CLT-31] weight lost, %j kg and days ago, typed %o: asked about %s %%', (earlier, weightLoss, percent) => {
    const pairs = earlier.flatMap((kg, at) => (at % 2 === 0 ? [weighing('actual', kg, addDays(today, -earlier[at + 1]!))] : []));
    const told = because('weight-loss-in-question', {
      weighings: [weighing('actual', 62, today), ...pairs],
      ...(weightLoss === undefined ? {} : { weightLoss }),
    });
    expect(told).toBe(percent === undefined ? undefined : `recorded weights: ${percent} % lost`);
  });

  test('[CLT-31] what asks the kidney team before a fluid figure, and before sodium is limited', () => {
    expect(because('fluid-ask-first', { conditions: ['heart-failure', 'edema'] })).toBe('There is fluid overload. Heart failure');
    expect(because('fluid-ask-first', {})).toBeUndefined();
    expect(because('salt-and-low-pressure', { conditions: ['hypotension'] })).toBe('low blood pressure');
    expect(because('salt-and-low-pressure', { conditions: ['ileostomy'] })).toBe('ileostomy');
    expect(because('salt-and-low-pressure', {})).toBeUndefined();
  });

  test('[CLT-31] an albumin of half a year ago is compared, an older one is not', () => {
    const fell = (days: number) =>
      because('do-not-restrict', {
        labs: [lab('albumin', 4.3, 'g/dL', addDays(today, -days)), lab('albumin', 3.9, 'g/dL', addDays(today, -1))],
      });
    expect(fell(183)).toContain('Albumin fell from 4.3 to 3.9 g/dL.');
    expect(fell(184)).toBeUndefined();
  });
});

describe('what a setting, a medicine or a supplement raises (facts 8)', () => {
  const icodextrin = { treatment: { ...peritoneal, icodextrin: true } } as const;
  const egfr = (value: number) => of('egfr', 'mL/min/{1.73_m2}', value);
  test.each<[string, Partial<Assessment>, string | undefined]>([
    ['icodextrin-meter', icodextrin, 'icodextrin'],
    ['icodextrin-meter', { treatment: peritoneal }, undefined],
    ['out-of-scope', { age: { years: 17 } }, 'under 18'],
    ['out-of-scope', { age: { years: 18 } }, undefined],
    ['out-of-scope', { pregnant: true }, 'pregnant'],
    ['out-of-scope', { breastfeeding: true }, 'breastfeeding'],
    ['licorice', { medicines: ['digoxin'] }, 'digoxin'],
    ['licorice', {}, undefined],
    ['sports-products', { supplements: ['creatine', 'vitamin-a'] }, 'creatine'],
    ['sports-products', { supplements: ['sports-or-slimming-product', 'protein-powder'] }, 'sports or slimming product, protein powder'],
    ['sports-products', { supplements: ['vitamin-a'] }, undefined],
    ['sglt2', { medicines: ['sglt2-inhibitor'] }, undefined],
    ['sglt2', { conditions: ['acute-illness'] }, undefined],
    ['vitamin-a', { supplements: ['vitamin-a'] }, undefined],
    ['vitamin-a', hemodialysis, undefined],
    ['magnesium-aluminum', egfr(29), 'eGFR under 30'],
    ['magnesium-aluminum', egfr(30), undefined],
    ['magnesium-aluminum', egfr(29.6), undefined], // shown as 30, which decides (facts 1.1)
    ['magnesium-aluminum', { stage: { value: 'G5', on: '2026-01-01' } }, 'eGFR under 30'],
    ['magnesium-aluminum', hemodialysis, 'dialysis'],
    ['vitamin-c', egfr(29), 'eGFR under 30'],
    ['noni', of('potassium', 'mmol/L', 5.2), undefined],
    ['ketoanalogs', {}, undefined],
    ['vitamin-k', {}, undefined],
    ['low-sugar', {}, undefined],
    ['food-safety', {}, undefined],
    ['food-safety', { medicines: ['high-dose-steroid'] }, 'immunosuppressed'],
    ['grapefruit', { medicines: ['ciclosporin'] }, 'tacrolimus or cyclosporine'],
    ['grapefruit', { medicines: ['sirolimus-or-everolimus'] }, undefined],
    ['grapefruit-mtor', { medicines: ['tacrolimus'] }, undefined],
  ])('[CLT-31] %s, %o: %s', (id, more, told) => {
    expect(because(id, more)).toBe(told);
  });

  test('[CLT-31] what holds for everybody is no line of the client’s own', () => {
    const all = cautionsFor(checkAssessment(clientWith({ ...of('potassium', 'mmol/L', 6.1), conditions: ['ileostomy'] }), today).facts);
    const own = (id: string) => all.find(one => one.id === id)?.isOwn;
    expect(['potassium-6.0', 'salt-and-low-pressure', 'star-fruit'].map(own)).toEqual([true, true, false]);
  });
});
