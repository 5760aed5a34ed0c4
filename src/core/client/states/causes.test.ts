import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { calciumAbove } from './calciumAbove.ts';
import { phosphateCauses } from './phosphateCauses.ts';
import { causeWords, potassiumCauses } from './potassiumCauses.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;
const of = (analyte: Analyte, value: number, unit: string) => ({ labs: [lab(analyte, value, unit)] });
const ktv = (value: number) => of('spKtV', value, '{ratio}');

// Facts 4.4; trimethoprim, heparin and catabolism from memory.
describe('causes of a high potassium on the client’s own record', () => {
  test.each<[string, Partial<Assessment>, onRecord: string | undefined, asCause?: string]>([
    [
      'Potassium tablets',
      { supplements: ['salt-substitute', 'herbal'], medicines: ['potassium-salt'] },
      'salt substitute, potassium salt, herbal',
      'salt substitute, potassium salt, herbal',
    ],
    [
      'Sample',
      { labs: [lab('potassium', 5.8, 'mmol/L', '2026-06-05', { hemolyzed: true })] },
      'potassium 5.8 mmol/L (on 2026-06-05, 10 days old, hemolyzed)',
    ],
    ['Sample', of('potassium', 5.8, 'mmol/L'), undefined],
    [
      'Acidosis',
      of('bicarbonate', 21.9, 'mmol/L'),
      'bicarbonate 21.9 mmol/L (on 2026-06-05, 10 days old)',
      'acidosis (bicarbonate 21.9 mmol/L (on 2026-06-05, 10 days old))',
    ],
    ['Acidosis', of('bicarbonate', 22, 'mmol/L'), undefined],
    ['Constipation', { symptoms: ['constipation'] }, 'constipation', 'constipation'],
    [
      'Insulin lack',
      of('glucose', 251, 'mg/dL'),
      'glucose 251 mg/dL (on 2026-06-05, 10 days old)',
      'high glucose or a fast (glucose 251 mg/dL (on 2026-06-05, 10 days old))',
    ],
    ['Insulin lack', of('glucose', 250, 'mg/dL'), undefined],
    [
      'Insulin lack',
      of('hba1c', 10.1, '%'),
      'HbA1c 10.1 % (on 2026-06-05, 10 days old)',
      'high glucose or a fast (HbA1c 10.1 % (on 2026-06-05, 10 days old))',
    ],
    ['Insulin lack', of('hba1c', 10, '%'), undefined],
    [
      'Insulin lack',
      { symptoms: ['ketones'], conditions: ['fasting-for-faith'] },
      'ketones, fasting',
      'high glucose or a fast (ketones, fasting)',
    ],
    ['RAAS inhibitor', { medicines: ['raas-inhibitor'] }, 'RAAS inhibitor', 'RAAS inhibitor'],
    [
      'RAAS inhibitor',
      { medicines: ['raas-inhibitor'], raasChangedOn: '2026-06-01' },
      'RAAS inhibitor, changed on 2026-06-01',
      'RAAS inhibitor, changed on 2026-06-01',
    ],
    ['RAAS inhibitor', { raasChangedOn: '2026-06-01' }, undefined],
    ['Mineralocorticoid', { medicines: ['potassium-sparing-diuretic'] }, 'potassium sparing diuretic', 'potassium sparing diuretic'],
    ['Trimethoprim', { medicines: ['trimethoprim'] }, 'trimethoprim', 'trimethoprim'],
    ['Heparin', { medicines: ['nsaid', 'digoxin'] }, 'NSAID, digoxin', 'NSAID, digoxin'],
    [
      'Dialysis dose',
      ktv(1.19),
      'spKt/V 1.19 (on 2026-06-05, 10 days old)',
      'too little dialysis (spKt/V 1.19 (on 2026-06-05, 10 days old))',
    ],
    ['Dialysis dose', ktv(1.2), undefined],
    [
      'Dialysis dose',
      { ...hemodialysis, symptoms: ['missed-or-shortened-session'] },
      'missed or shortened session',
      'too little dialysis (missed or shortened session)',
    ],
    ['Dialysis dose', { symptoms: ['missed-or-shortened-session'] }, undefined],
    ['Catabolism', { conditions: ['peritonitis'], symptoms: ['fever'] }, 'acute illness, fever', 'catabolism (acute illness, fever)'],
    [
      'Catabolism',
      { medicines: ['high-dose-steroid'], weightLoss: { percent3Months: 5 } },
      'high dose steroid, weight loss',
      'catabolism (high dose steroid, weight loss)',
    ],
    [
      'Catabolism',
      of('cReactiveProtein', 10.1, 'mg/L'),
      'C-reactive protein 10.1 mg/L (on 2026-06-05, 10 days old)',
      'catabolism (C-reactive protein 10.1 mg/L (on 2026-06-05, 10 days old))',
    ],
    ['Catabolism', of('cReactiveProtein', 10, 'mg/L'), undefined],
    ['Bleeding', of('hemoglobin', 9, 'g/dL'), undefined],
    [
      'Acute kidney injury',
      { acuteKidneyInjury: true, symptoms: ['vomiting', 'diarrhea'] },
      'acute kidney injury, vomiting, diarrhea',
      'acute kidney injury, vomiting, diarrhea',
    ],
    [
      'Acute kidney injury',
      of('sodium', 134, 'mmol/L'),
      'sodium 134 mmol/L (on 2026-06-05, 10 days old)',
      'sodium 134 mmol/L (on 2026-06-05, 10 days old)',
    ],
    ['Acute kidney injury', of('sodium', 135, 'mmol/L'), undefined],
  ])('[CLT-12] %s, %o: %s', (begins, more, onRecord, asCause) => {
    const found = potassiumCauses(factsOf(more)).find(({ text }) => text.startsWith(begins))!;
    expect([found.onRecord, found.asCause]).toEqual([onRecord, asCause]);
  });

  test('[CLT-12] with nothing on record all thirteen groups of the sheet are asked about, none as the client’s own', () => {
    const causes = potassiumCauses(factsOf({}));
    expect(causes).toHaveLength(13);
    expect(causes.filter(({ onRecord, asCause }) => onRecord !== undefined || asCause !== undefined)).toEqual([]);
  });

  test('[CLT-12] what is on record comes first, and is read so', () => {
    const words = potassiumCauses(factsOf({ symptoms: ['constipation'], medicines: ['trimethoprim'] })).map(causeWords);
    expect(words.slice(0, 3)).toEqual([
      'On record: constipation. Constipation: bowel record.',
      'On record: trimethoprim. Trimethoprim or pentamidine in the last 2 weeks.',
      expect.stringMatching(/^Potassium tablets/),
    ]);
  });
});

describe('what of the record can raise phosphate beside food', () => {
  const causes = (more: Partial<Assessment>) => phosphateCauses(factsOf(more)).map(({ onRecord, asCause }) => [onRecord, asCause]);
  test.each<[Partial<Assessment>, readonly (readonly (string | undefined)[])[]]>([
    [{}, []],
    [{ ...hemodialysis, symptoms: ['missed-or-shortened-session'] }, [['missed or shortened session', 'missed or shortened session']]],
    [{ symptoms: ['missed-or-shortened-session'] }, []],
    [hemodialysis, []],
    [ktv(1.19), [['spKt/V 1.19 (on 2026-06-05, 10 days old)', 'too little dialysis (spKt/V 1.19 (on 2026-06-05, 10 days old))']]],
    [ktv(1.2), []],
    [
      { medicines: ['active-vitamin-d', 'phosphate-binder'] },
      [
        ['active vitamin D', 'active vitamin D'],
        ['phosphate binder', undefined],
      ],
    ],
    [{ supplements: ['protein-powder'] }, [['protein powder', 'protein powder']]],
    [{ supplements: ['sports-or-slimming-product'] }, [['sports or slimming product', 'sports or slimming product']]],
  ])('[CLT-14] %o: %j', (more, expected) => {
    expect(causes(more)).toEqual(expected);
  });
});

// Care rules 4: above the laboratory's limit together with a calcium target, a binder or a supplement. 10.2: KDOQI 2003, from memory.
describe('calcium above its limit', () => {
  const corrected = (mgPerDl: number, on = '2026-06-05', upperNormal?: number) =>
    lab('correctedCalcium', mgPerDl, 'mg/dL', on, upperNormal === undefined ? {} : { upperNormal });
  const total = (mgPerDl: number, on = '2026-06-05') => lab('calcium', mgPerDl, 'mg/dL', on);
  const albumin = (gPerDl: number, on = '2026-06-05') => lab('albumin', gPerDl, 'g/dL', on);
  const above = (labs: Assessment['labs'], more: Partial<Assessment> = { supplements: ['calcium'] }) =>
    calciumAbove(factsOf({ ...more, labs }));

  test.each<[Partial<Assessment>, string]>([
    [{ supplements: ['calcium'] }, 'calcium supplement'],
    [{ medicines: ['phosphate-binder'] }, 'phosphate binder'],
    [{ medicines: ['active-vitamin-d'] }, 'active vitamin D'],
    [{ medicines: ['ketoanalogs'] }, 'ketoanalogs'],
    [{ stage: { value: 'G4', on: '2026-01-10' } }, 'calcium target'],
    [{ stage: { value: 'G4', on: '2026-01-10' }, medicines: ['phosphate-binder'] }, 'phosphate binder, calcium target'],
  ])('[CLT-31] with %o', (more, source) => {
    expect(above([corrected(10.3)], more)).toMatch(new RegExp(`10\\.3 mg/dL .*, with ${source}$`));
  });

  test('[CLT-31] without a source of calcium, or without a result, nothing is said', () => {
    expect(above([corrected(10.3)], {})).toBeUndefined();
    expect(above([])).toBeUndefined();
  });

  test('[CLT-31] over the laboratory’s own limit, else over 10.2 mg/dL', () => {
    expect(above([corrected(10.2)])).toBeUndefined();
    expect(above([corrected(10.3, '2026-06-05', 10.5)])).toBeUndefined();
    expect(above([corrected(10.1, '2026-06-05', 10)])).toMatch(/10\.1/);
  });

  test('[CLT-31] a total is corrected by the lowest albumin of its day, and stands as it is without', () => {
    // 9.8 + 0.8 × (4.0 − 3.0) = 10.6 (facts 5, F1).
    expect(above([total(9.8), albumin(4.1), albumin(3)])).toMatch(/9\.8/);
    expect(above([total(9.8), albumin(4.1)])).toBeUndefined();
    expect(above([total(9.8), albumin(3, '2026-06-04')])).toBeUndefined();
    expect(above([total(10.3)])).toMatch(/10\.3/);
  });

  test('[CLT-31] the laboratory’s corrected one stands unless a total is newer', () => {
    expect(above([corrected(10), total(10.4)])).toBeUndefined();
    expect(above([corrected(10.5), total(9.8, '2026-06-10')])).toBeUndefined();
    expect(above([corrected(10.5, '2026-06-10'), total(9.8)])).toMatch(/10\.5/);
  });
});
