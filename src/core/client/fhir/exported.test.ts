import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, weighing } from '#core/client/assessment/clientFixture.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { careBundle } from './careBundle.ts';
import { labsFromFhir } from './labsFromFhir.ts';
import { loincFor } from './loinc.ts';
import { nutritionOrder } from './nutritionOrder.ts';
import { labObservation, weightObservation } from './observations.ts';
import { ucumFromUnit } from './ucum.ts';

const person = { reference: 'Patient/1' };
const ucum = 'http://unitsofmeasure.org';
const [signed] = recordOf(hemodialysisClient).prescriptions;

describe('a nutrition order', () => {
  const target: DecidedTarget = { item: 'protein', unit: 'g', kind: 'bounded', range: { lo: 80, hi: 80 }, from: 'own', says: '' };
  const orderOf = (targets: readonly DecidedTarget[], assessment: Partial<Assessment> = {}, at = signed!.signed.at) =>
    nutritionOrder({ ...signed!, targets, signed: { ...signed!.signed, at } }, clientWith(assessment), person);

  test.each<[string, Partial<DecidedTarget>, isAmount: boolean]>([
    ['one figure', {}, true],
    ['one figure, within', { limit: 'within' }, true],
    ['a range', { range: { lo: 60, hi: 80 } }, false],
    ['a least of one figure', { limit: 'at-least' }, false],
    ['energy, which is no nutrient', { item: 'energy', unit: 'kcal' }, false],
    [
      'what is named on a label, which is no amount',
      { item: 'phosphateAdditives', unit: 'named on the label', range: { lo: 0, hi: 0 } },
      false,
    ],
  ])('[FHR-2] %s', (_, more, isAmount) => {
    const { nutrient } = orderOf([{ ...target, ...more }]).oralDiet;
    expect(nutrient).toEqual(
      isAmount ? [{ modifier: { text: 'Protein' }, amount: { value: 80, unit: 'g', system: ucum, code: 'g' } }] : undefined,
    );
  });

  test('[FHR-2] without a figure there is no amount; every target stands in the instruction', () => {
    const { range: _, ...unbounded } = target;
    const { oralDiet } = orderOf([target, { ...unbounded, item: 'sodium', unit: 'mg', kind: 'no-limit' }]);
    expect(oralDiet.nutrient).toHaveLength(1);
    expect(oralDiet.instruction).toBe('Targets for a day. Protein: 80 g. Sodium: no limit set.');
  });

  test('[FHR-2] what is not eaten, where something is', () => {
    const excluded = (allergies: readonly string[], avoidedFoods: readonly string[]) =>
      orderOf([target], { allergies, avoidedFoods }).excludeFoodModifier;
    expect(excluded([], [])).toBeUndefined();
    expect(excluded(['  '], [''])).toBeUndefined();
    expect(excluded(['sesame', ' '], ['pork'])).toEqual([{ text: 'sesame (allergy)' }, { text: 'pork' }]);
  });

  test('[FHR-2] a time has its zone, or the day stands alone', () => {
    const dateTime = (at: string) => orderOf([target], {}, at).dateTime;
    expect(['2026-06-15T09:30:00Z', '2026-06-15T09:30:00.123-05:00'].map(dateTime)).toEqual([
      '2026-06-15T09:30:00Z',
      '2026-06-15T09:30:00.123-05:00',
    ]);
    expect(['2026-06-15T09:30:00', '2026-06-15 09:30'].map(dateTime)).toEqual(['2026-06-15', '2026-06-15']);
  });
});

describe('an observation', () => {
  const amount = (value: number) => ({ value, unit: 'mmol/L', system: ucum, code: 'mmol/L' });

  test('[FHR-4] has what the result has, and nothing else', () => {
    const plain = labObservation(lab('potassium', 5.2, 'mmol/L', '2026-06-05'), 'one', person);
    expect(Object.keys(plain).sort()).toEqual([
      ...['category', 'code', 'effectiveDateTime', 'id', 'resourceType', 'status', 'subject', 'valueQuantity'],
    ]);
    const full = lab('potassium', 5.2, 'mmol/L', '2026-06-05', { takenAt: '07:30', hemolyzed: true, lowerNormal: 3.5, upperNormal: 5.1 });
    expect(labObservation(full, 'one', person)).toMatchObject({
      contained: [{ resourceType: 'Specimen', id: 'sample' }],
      specimen: { reference: '#sample' },
      note: [{ text: 'Taken at 07:30.' }],
      referenceRange: [{ low: amount(3.5), high: amount(5.1) }],
    });
  });

  test('[FHR-4] of a range with one end has that end alone', () => {
    const rangeOf = (more: { lowerNormal?: number; upperNormal?: number }) =>
      labObservation(lab('potassium', 5.2, 'mmol/L', '2026-06-05', more), 'one', person).referenceRange;
    expect(rangeOf({ lowerNormal: 3.5 })).toStrictEqual([{ low: amount(3.5) }]);
    expect(rangeOf({ upperNormal: 5.1 })).toStrictEqual([{ high: amount(5.1) }]);
  });

  test('[FHR-4] of a weight is a vital sign where it was measured', () => {
    const of = (kind: 'after-dialysis' | 'dry') => weightObservation(weighing(kind, 70), 'one', person);
    expect(of('after-dialysis')).toMatchObject({
      category: [{ coding: [{ code: 'vital-signs' }] }],
      code: { coding: [{ system: 'http://loinc.org', code: '29463-7' }], text: 'body weight, after dialysis' },
    });
    expect(of('dry').category).toEqual([{ text: 'nutrition assessment' }]);
    expect(of('dry').code).toStrictEqual({ text: 'body weight, dry' });
  });

  // Facts 4.1: 11065-0 and 11064-3 are of before and after dialysis; a result that is written has the plain code.
  test('[FHR-4] is written with the code of its unit, and its unit as UCUM has it', () => {
    expect(loincFor('ureaNitrogen', 'mg/dL')?.code).toBe('3094-0');
    expect(loincFor('potassium', 'mEq/L')?.code).toBe('2823-3');
    expect(['mEq/L', 'lb', 'mg/dL', 'constructor'].map(ucumFromUnit)).toEqual(['meq/L', '[lb_av]', 'mg/dL', 'constructor']);
  });
});

describe('a bundle', () => {
  const record = recordOf(hemodialysisClient);
  const idsOf = (assessmentId: string) => {
    const [newest, ...others] = record.assessments;
    const assessments = [{ ...newest!, id: assessmentId }, ...others];
    return careBundle({ ...record, assessments, prescriptions: [{ ...signed!, assessmentId }] })!.entry.map(({ resource }) => resource.id);
  };

  test('[FHR-3] numbers its results and weights from 1, with at most 64 letters and no two alike', () => {
    expect(idsOf('a')).toEqual(['prescription-1', 'a-lab-1', 'a-lab-2', 'a-lab-3', 'a-lab-4', 'a-lab-5', 'a-weight-1', 'a-weight-2']);
    const long = idsOf('x'.repeat(64));
    expect(long.slice(1).every(id => id.length === 64)).toBe(true);
    expect(new Set(long).size).toBe(long.length);
  });

  test('[FHR-5] is none where the assessment signed for is gone, and has an earlier one’s own results', () => {
    expect(careBundle({ ...record, assessments: [] })).toBeUndefined();
    const earlier = careBundle({ ...record, prescriptions: [{ ...signed!, assessmentId: 'assessment-1' }] })!;
    expect(labsFromFhir(earlier).value).toEqual([lab('potassium', 5.1, 'mmol/L', '2026-03-01')]);
  });
});

describe('what is read of a file of another program', () => {
  const observation = (more: object = {}) => ({
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '2823-3' }] },
    effectiveDateTime: '2026-06-05',
    valueQuantity: { value: 5.2, unit: 'mmol/L', system: ucum, code: 'mmol/L' },
    ...more,
  });
  const readOne = (more: object) => labsFromFhir(observation(more)).value;
  const told = (json: unknown) => labsFromFhir(json).issues.map(({ code, found }) => [code, found]);
  const plain = { analyte: 'potassium', value: 5.2, unit: 'mmol/L', takenOn: '2026-06-05' };

  test('[FHR-6] a result has nothing that was not sent', () => {
    expect(readOne({})).toStrictEqual([plain]);
  });

  test('[FHR-10] what is none of it is told by its kind', () => {
    expect([null, 7, 'text', {}, { resourceType: 'Patient' }, undefined].map(json => told(json)[0]![1])).toEqual([
      ...['nothing', 'number', 'string', 'an object without resourceType', 'Patient', 'nothing'],
    ]);
    const bundle = { resourceType: 'Bundle', entry: [null, 7, {}, { resource: { resourceType: 'Patient' } }] };
    expect(told(bundle)).toEqual([
      ...[
        ['lab-entry-not-read', 'nothing'],
        ['lab-entry-not-read', 'nothing'],
        ['lab-entry-not-read', 'nothing'],
      ],
      ['lab-entry-not-read', 'Patient'],
    ]);
  });

  test('[FHR-7] codes of two analytes are none; two codes of one are one', () => {
    const codes = (...all: readonly string[]) => ({ code: { coding: all.map(code => ({ system: 'http://loinc.org', code })) } });
    expect(told(observation(codes('2823-3', '2951-2')))).toEqual([['lab-analyte-not-known', '2823-3, 2951-2']]);
    expect(told(observation({ code: {} }))).toEqual([['lab-analyte-not-known', 'no LOINC code']]);
    expect(readOne(codes('2823-3', '6298-4'))).toHaveLength(1);
  });

  test('[FHR-7] a figure with a sign before it is told with the sign', () => {
    const less = { value: 5, comparator: '<', unit: 'mmol/L' };
    expect(told(observation({ valueQuantity: less }))).toEqual([['lab-value-not-a-number', '2823-3: <5']]);
    expect(told(observation({ valueQuantity: { unit: 'mmol/L' } }))).toEqual([['lab-value-not-a-number', '2823-3: no figure']]);
  });

  test('[FHR-7] the unit: by its UCUM code, else as printed; where both contradict each other, none', () => {
    const unitOf = (quantity: object) => readOne({ valueQuantity: { value: 5.2, ...quantity } })[0]?.unit;
    expect(unitOf({ unit: 'mEq/L', system: 'http://other.example', code: 'mmol/L' })).toBe('mEq/L');
    expect(unitOf({ unit: 'mEq/L', system: ucum, code: '' })).toBe('mEq/L');
    expect(unitOf({ unit: 'mEq/L', system: ucum })).toBe('mEq/L');
    expect(unitOf({ unit: 'millimoles', system: ucum, code: 'mmol/L' })).toBe('mmol/L');
    expect(unitOf({ unit: 'mEq/L', system: ucum, code: 'meq/L' })).toBe('mEq/L');
    expect(unitOf({ unit: 'mEq/L', system: ucum, code: 'mmol/L' })).toBeUndefined();
  });

  test('[FHR-7] limits count in the unit of the result, of one range alone', () => {
    const range = (high: object) => ({ high: { value: 5.1, unit: 'mmol/L', ...high } });
    const upperOf = (...referenceRange: readonly object[]) => readOne({ referenceRange })[0]?.upperNormal;
    expect(upperOf(range({}))).toBe(5.1);
    expect(upperOf(range({ unit: 'mEq/L' }))).toBeUndefined();
    expect(upperOf(range({}), range({}))).toBeUndefined();
  });

  test('[FHR-6] a hemolyzed sample by the code of its condition, of its own system', () => {
    const contained = (system: string, code: string) => [{ resourceType: 'Specimen', condition: [{ coding: [{ system, code }] }] }];
    const conditions = 'http://terminology.hl7.org/CodeSystem/v2-0493';
    const isHemolyzed = (system: string, code: string) => readOne({ contained: contained(system, code) })[0]?.hemolyzed === true;
    expect([isHemolyzed(conditions, 'HEM'), isHemolyzed(conditions, 'CLOT'), isHemolyzed('http://other.example', 'HEM')]).toEqual([
      ...[true, false, false],
    ]);
  });
});
