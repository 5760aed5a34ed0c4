import { describe, expect, it } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { cautionsFor } from './cautions.ts';

const cautionsOf = (more: Partial<Assessment>) => cautionsFor(checkAssessment(clientWith(more), today).facts);
const idsOf = (more: Partial<Assessment>) => cautionsOf(more).map(({ id }) => id);
const one = (analyte: Analyte, value: number, unit: string) => ({ labs: [lab(analyte, value, unit, '2026-06-14')] });
const inCenter = { setting: 'hemodialysis', place: 'in-center' } as const;
const transplant = { setting: 'transplant', transplantedOn: '2024-01-01' } as const;
const peritoneal = { setting: 'peritoneal-dialysis', method: 'capd' } as const;

const always = ['salt-substitute', 'star-fruit', 'herbal', 'sodium-phosphate-bowel'];

describe('values that need contact (facts 4.3)', () => {
  const raises: readonly [id: string, contact: string, more: Partial<Assessment>][] = [
    ['potassium-6.5', 'emergency-now', one('potassium', 6.5, 'mmol/L')],
    ['potassium-6.5', 'emergency-now', { ...one('potassium', 5.6, 'mmol/L'), symptoms: ['palpitations'] }],
    ['potassium-6.0', 'same-day', one('potassium', 6.4, 'mmol/L')],
    ['potassium-5.5-unwell', 'same-day', { ...one('potassium', 5.5, 'mmol/L'), conditions: ['acute-illness'] }],
    ['potassium-5.5', 'within-days', one('potassium', 5.9, 'mmol/L')],
    [
      'potassium-rise',
      'urgent',
      {
        labs: [
          lab('potassium', 4.5, 'mmol/L', '2026-06-14', { takenAt: '22:00' }),
          lab('potassium', 5.1, 'mmol/L', '2026-06-15', { takenAt: '06:30' }),
        ],
      },
    ],
    ['potassium-2.5', 'emergency-now', one('potassium', 2.4, 'mmol/L')],
    ['potassium-3.0', 'same-day', one('potassium', 2.9, 'mmol/L')],
    ['hemodialysis-missed', 'same-day', { treatment: inCenter, symptoms: ['missed-or-shortened-session'] }],
    ['calcium-high', 'same-day', one('correctedCalcium', 3.05, 'mmol/L')],
    ['calcium-high', 'same-day', { labs: [lab('calcium', 11.6, 'mg/dL', '2026-06-14'), lab('albumin', 3, 'g/dL', '2026-06-14')] }],
    ['calcium-low', 'same-day', one('calcium', 7.4, 'mg/dL')],
    ['phosphate-1.0', 'same-day', one('phosphate', 0.31, 'mmol/L')],
    ['phosphate-2.0-new-feeding', 'same-day', { ...one('phosphate', 1.9, 'mg/dL'), conditions: ['new-feeding'] }],
    ['magnesium-low', 'same-day', one('magnesium', 0.9, 'mg/dL')],
    ['magnesium-high', 'same-day', one('magnesium', 5, 'mg/dL')],
    ['bicarbonate-15', 'same-day', one('bicarbonate', 14, 'mmol/L')],
    ['sodium-120', 'emergency-now', one('sodium', 119, 'mmol/L')],
    ['sodium-125', 'same-day', one('sodium', 124, 'mmol/L')],
    ['sodium-155', 'same-day', one('sodium', 156, 'mmol/L')],
    ['glucose-low', 'same-day', one('glucose', 53, 'mg/dL')],
    ['glucose-high', 'same-day', { symptoms: ['ketones'] }],
    ['hemoglobin-7', 'same-day', one('hemoglobin', 68, 'g/L')],
    ['hemoglobin-drop', 'same-day', { labs: [lab('hemoglobin', 11, 'g/dL', '2026-05-01'), lab('hemoglobin', 9, 'g/dL', '2026-06-14')] }],
    [
      'creatinine-rise',
      'same-day',
      { labs: [lab('creatinine', 150, 'umol/L', '2026-06-12'), lab('creatinine', 177, 'umol/L', '2026-06-14')] },
    ],
    ['peritoneal-infection', 'same-day', { treatment: peritoneal, symptoms: ['cloudy-drain'] }],
    ['transplant-unwell', 'same-day', { treatment: transplant, symptoms: ['missed-doses'] }],
  ];

  it.each(raises)('[CLT-30] %s asks for %s contact', (id, contact, more) => {
    const found = cautionsOf(more).find(caution => caution.id === id)!;
    expect(found).toMatchObject({ contact, sameDay: contact !== 'within-days' });
    expect(found.because).not.toBe('');
    expect(found.source.text).not.toBe('');
  });

  it('[CLT-30] values just inside raise nothing', () => {
    const inside: readonly [Analyte, number, string][] = [
      ['potassium', 5.4, 'mmol/L'],
      ['potassium', 3, 'mmol/L'],
      ['correctedCalcium', 12, 'mg/dL'],
      ['correctedCalcium', 7.5, 'mg/dL'],
      ['phosphate', 1, 'mg/dL'],
      ['magnesium', 4.9, 'mg/dL'],
      ['bicarbonate', 15, 'mmol/L'],
      ['sodium', 125, 'mmol/L'],
      ['sodium', 155, 'mmol/L'],
      ['glucose', 54, 'mg/dL'],
      ['glucose', 360, 'mg/dL'],
      ['hemoglobin', 7, 'g/dL'],
    ];
    for (const [analyte, value, unit] of inside) {
      expect(
        cautionsOf(one(analyte, value, unit)).filter(({ contact }) => contact !== undefined),
        `${analyte} ${value}`,
      ).toEqual([]);
    }
  });

  it('[CLT-30] one tier of potassium speaks, and those for today come first', () => {
    const found = cautionsOf({ ...one('potassium', 6.7, 'mmol/L'), diabetes: true });
    expect(found.filter(({ id }) => id.startsWith('potassium'))).toHaveLength(1);
    expect(found[0]!.id).toBe('potassium-6.5');
  });
});

describe('cautions (facts section 8)', () => {
  it('[CLT-31] every client is told of salt substitutes, star fruit, herbal products and phosphate bowel preparation', () => {
    expect(idsOf({})).toEqual(always);
  });

  const raises: readonly [id: string, more: Partial<Assessment>][] = [
    ['grapefruit', { medicines: ['tacrolimus'] }],
    ['grapefruit-mtor', { medicines: ['sirolimus-or-everolimus'] }],
    ['food-safety', { treatment: transplant }],
    ['pasteurized', { medicines: ['other-immunosuppressant'] }],
    ['vitamin-c', { conditions: ['calcium-oxalate-stones'] }],
    ['vitamin-c', { treatment: inCenter }],
    ['magnesium-aluminum', { stage: { value: 'G4', on: '2026-01-01' } }],
    ['low-sugar', { diabetes: true }],
    ['icodextrin-meter', { treatment: { ...peritoneal, icodextrin: true } }],
    ['out-of-scope', { breastfeeding: true }],
    ['refeeding', { weighings: [weighing('actual', 43)] }],
    ['refeeding', { intake: { littleForDays: 11 } }],
    ['refeeding', { weighings: [weighing('actual', 48)], intake: { littleForDays: 6 } }],
    ['refeeding', { ...one('potassium', 3.2, 'mmol/L'), conditions: ['new-feeding'] }],
    ['do-not-restrict', { appetite: 'poor' }],
    ['do-not-restrict', { labs: [lab('albumin', 4.1, 'g/dL', '2026-03-01'), lab('albumin', 3.7, 'g/dL')] }],
    ['vitamin-k', { medicines: ['vitamin-k-antagonist'] }],
    ['overload', { treatment: inCenter, weighings: [weighing('dry', 72), weighing('before-dialysis', 75.6)] }],
    ['licorice', { conditions: ['hypertension'] }],
    ['licorice', one('potassium', 3.2, 'mmol/L')],
    ['noni', one('potassium', 5.8, 'mmol/L')],
    ['sports-products', { supplements: ['protein-powder'] }],
    ['ketoanalogs', { medicines: ['ketoanalogs'] }],
    ['sglt2', { medicines: ['sglt2-inhibitor'], conditions: ['fasting-for-faith'] }],
    ['fasting', { conditions: ['fasting-for-faith'] }],
    ['vitamin-a', { treatment: inCenter, supplements: ['vitamin-a'] }],
    ['long-hemodialysis', { treatment: { ...inCenter, sessionHours: 8 } }],
  ];

  it.each(raises)('[CLT-31] %s is shown when its condition is met, with the client’s own fact and the source', (id, more) => {
    expect(cautionsOf(more).find(caution => caution.id === id)).toMatchObject({
      sameDay: false,
      because: expect.stringMatching(/\S/),
      source: { text: expect.stringMatching(/\S/) },
    });
    expect(always).not.toContain(id);
  });

  it('[CLT-31] the gain between sessions is told in the client’s own numbers', () => {
    const found = cautionsOf({ treatment: inCenter, weighings: [weighing('dry', 72), weighing('before-dialysis', 75.6)] });
    expect(found.find(({ id }) => id === 'overload')!.because).toBe(
      'over 3.2 kg (7.1 lb) between two treatments, 4.5 % of the dry weight of 72.0 kg',
    );
    expect(found.find(({ id }) => id === 'gain-over-line')).toMatchObject({ because: 'gain 5.0 % (3.6 kg over dry 72.0 kg)', isOwn: true });
  });

  it('[CLT-31] what does not meet a condition is not said: home alone, BMI alone, a low potassium of someone who eats', () => {
    expect(idsOf({ treatment: { ...inCenter, place: 'home' } })).not.toContain('long-hemodialysis');
    expect(idsOf({ weighings: [weighing('actual', 48)] })).not.toContain('refeeding');
    expect(idsOf(one('potassium', 3.2, 'mmol/L'))).not.toContain('refeeding');
    expect(idsOf({ conditions: ['hypertension'] })).not.toContain('overload');
  });

  it('[CLT-31] grapefruit for every transplant unless the medicine list names other immunosuppressants alone', () => {
    expect(idsOf({ treatment: transplant })).toContain('grapefruit');
    expect(idsOf({ treatment: transplant, medicines: ['other-immunosuppressant'] })).not.toContain('grapefruit');
  });
});

describe('the age of an alarm (care rules 2)', () => {
  const potassiumOf = (on: string, more: Partial<Assessment> = {}) =>
    cautionsOf({ ...more, labs: [lab('potassium', 6.7, 'mmol/L', on), ...(more.labs ?? [])] }).find(({ id }) => id === 'potassium-6.5');

  it('[CLT-30] 7 days as of now, to 45 days it is asked whether it was acted on, then it is history', () => {
    expect(potassiumOf('2026-06-08')).toMatchObject({ contact: 'emergency-now', sameDay: true });
    expect(potassiumOf('2026-06-07')).toMatchObject({ contact: 'within-days', sameDay: false, told: expect.stringContaining('acted on') });
    expect(potassiumOf('2026-05-01')).toMatchObject({ contact: 'within-days' });
    expect(potassiumOf('2026-04-30')).toBeUndefined();
  });

  it('[CLT-30] a glucose is of now for 2 days', () => {
    const glucoseOf = (on: string) => cautionsOf({ labs: [lab('glucose', 400, 'mg/dL', on)] }).find(({ id }) => id === 'glucose-high');
    expect(glucoseOf('2026-06-13')).toMatchObject({ contact: 'same-day' });
    expect(glucoseOf('2026-06-12')).toMatchObject({ contact: 'within-days' });
  });

  it('[CLT-30] a normal result lifts it; one after dialysis, a hemolyzed one and a lower one of the same day do not', () => {
    const afterIt = (more: Partial<Parameters<typeof lab>[4]>, on = '2026-06-12') =>
      potassiumOf('2026-06-11', { treatment: inCenter, labs: [lab('potassium', 4.4, 'mmol/L', on, more)] });
    expect(afterIt({})).toBeUndefined();
    expect(afterIt({ drawn: 'after-dialysis' })).toBeDefined();
    expect(afterIt({ hemolyzed: true })).toBeDefined();
    expect(afterIt({}, '2026-06-11')).toBeDefined();
  });

  it('[CLT-30] a hemolyzed 6.5 says that it may be falsely high, and to repeat now', () => {
    const found = cautionsOf({ labs: [lab('potassium', 6.6, 'mmol/L', '2026-06-14', { hemolyzed: true })] })[0];
    expect(found).toMatchObject({ id: 'potassium-6.5', contact: 'emergency-now', told: expect.stringContaining('repeat it now') });
  });

  it('[CLT-30] 5.6 to 5.9 before hemodialysis asks for causes at the next treatment, with no schedule of repeats', () => {
    const ids = idsOf({ treatment: inCenter, labs: [lab('potassium', 5.8, 'mmol/L', '2026-06-14')] });
    expect(ids).toContain('potassium-hemodialysis');
    expect(ids).not.toContain('potassium-5.5');
  });

  it('[CLT-30] in mmol/L the published figure of that unit holds; the clinic’s own holds for both (facts 4.3)', () => {
    const idsFor = (analyte: Analyte, value: number, unit: string) => idsOf(one(analyte, value, unit));
    expect(idsFor('correctedCalcium', 1.89, 'mmol/L')).toContain('calcium-low'); // under 1.9
    expect(idsFor('correctedCalcium', 1.9, 'mmol/L')).not.toContain('calcium-low');
    expect(idsFor('correctedCalcium', 3, 'mmol/L')).not.toContain('calcium-high'); // over 3.0
    expect(idsFor('magnesium', 2.01, 'mmol/L')).toContain('magnesium-high'); // over 2.0
    expect(idsFor('phosphate', 0.32, 'mmol/L')).not.toContain('phosphate-1.0'); // under 0.32
    expect(idsFor('glucose', 20, 'mmol/L')).not.toContain('glucose-high'); // over 20
    const own = [{ id: 'contact.magnesium-high', value: 6, by: 'A. N.', on: '2026-01-01' }] as const;
    const { facts } = checkAssessment(clientWith(one('magnesium', 2.01, 'mmol/L')), today, own);
    expect(cautionsFor(facts).map(({ id }) => id)).not.toContain('magnesium-high');
  });

  it('[CLT-30] a calcium that could not be corrected lifts no alarm; every albumin of the day is tried', () => {
    const high = lab('correctedCalcium', 12.4, 'mg/dL', '2026-06-12');
    expect(idsOf({ labs: [high, lab('calcium', 9.8, 'mg/dL', '2026-06-14')] })).toContain('calcium-high');
    const albumins = [lab('albumin', 4.1, 'g/dL', '2026-06-14'), lab('albumin', 3, 'g/dL', '2026-06-14')];
    // 11.5 + 0.8 × (4.0 − 3.0) = 12.3 (facts 5, F1).
    expect(idsOf({ labs: [lab('calcium', 11.5, 'mg/dL', '2026-06-14'), ...albumins] })).toContain('calcium-high');
  });

  it('[CLT-30] a clean emergency keeps its words beside a hemolyzed one, and both are shown', () => {
    const labs = [lab('potassium', 6.6, 'mmol/L', '2026-06-13'), lab('potassium', 7, 'mmol/L', '2026-06-14', { hemolyzed: true })];
    const found = cautionsOf({ labs }).find(({ id }) => id === 'potassium-6.5')!;
    expect(found.told).toMatch(/^Emergency/);
    expect(found.because).toMatch(/6\.6 mmol.*7 mmol.*hemolyzed/);
  });

  it('[CLT-30] creatinine up by exactly half, and within one day, is told; 26 umol/L in 60 hours is not', () => {
    const pair = (from: readonly [number, string, string], to: readonly [number, string, string]) =>
      idsOf({ labs: [from, to].map(([value, on, takenAt]) => lab('creatinine', value, 'umol/L', on, { takenAt })) });
    expect(pair([120, '2026-06-09', '08:00'], [180, '2026-06-14', '08:00'])).toContain('creatinine-rise');
    expect(pair([200, '2026-06-14', '06:00'], [260, '2026-06-14', '20:00'])).toContain('creatinine-rise');
    expect(pair([200, '2026-06-12', '08:00'], [240, '2026-06-14', '20:00'])).not.toContain('creatinine-rise');
  });

  it('[CLT-31] a salt substitute is told with a potassium that sets nothing; constipation makes nobody unwell', () => {
    const day = (value: number) => lab('potassium', value, 'mmol/L', '2026-06-14');
    expect(idsOf({ supplements: ['salt-substitute'], labs: [day(4.9), day(5.8)] })).toContain('salt-substitute-on-record');
    expect(idsOf({ symptoms: ['constipation'], labs: [day(5.6)] })).toContain('potassium-5.5');
    expect(idsOf({ symptoms: ['vomiting'], labs: [day(5.6)] })).toContain('potassium-5.5-unwell');
  });

  it('[CLT-31] an eGFR under 30 computed from creatinine cautions, and makes no stage', () => {
    expect(idsOf(one('creatinine', 6, 'mg/dL'))).toContain('magnesium-aluminum');
  });
});
