import fc from 'fast-check';
import { Fhir } from 'fhir/fhir.js';
import type { Bundle } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import type { WeightKind } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, weighing } from '#core/client/assessment/clientFixture.ts';
import { analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { unitsOf } from '#core/client/labs/labValue.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { careBundle } from './careBundle.ts';
import { labsFromFhir } from './labsFromFhir.ts';
import { loincCodes, loincFor } from './loinc.ts';

/** The validator is a general FHIR library with the R4 definitions of HL7; what is unexpected is an error. */
const validator = new Fhir();

function faultsOf(resource: unknown): readonly string[] {
  // As it would travel: JSON has no undefined.
  const { valid, messages } = validator.validate(JSON.parse(JSON.stringify(resource)), { errorOnUnexpected: true });
  // It lacks two value sets: all of LOINC, whose codes have a test of their own, and table 0493 of HL7 v2, from which HEM was read.
  const isUnheld = (message = '') =>
    /ValueSet\/(observation-codes|v2-0493)" could not be found|\((http:\/\/loinc\.org|.*v2-0493)\) not found/u.test(message);
  const told = messages.filter(({ message }) => !isUnheld(message));
  const faults = told.map(({ location, severity, message }) => `${severity} ${location}: ${message}`);
  return valid ? faults : ['not valid', ...faults];
}

type Writable<T> = { -readonly [Key in keyof T]: Writable<T[Key]> };

const record = recordOf(hemodialysisClient, [
  { item: 'protein', unit: 'g', range: { lo: 80, hi: 80 }, from: 'own', reason: 'as agreed', says: 'own decision' },
]);
const bundle = careBundle(record)!;
const [order, ...observations] = bundle.entry.map(({ resource }) => resource);

describe('what is exported', () => {
  it('[FHR-1] the bundle and every resource in it are valid R4', () => {
    expect(faultsOf(bundle)).toEqual([]);
    for (const { resource } of bundle.entry) expect(faultsOf(resource)).toEqual([]);
    // By the published types as well: this compiles.
    const typed: Bundle = structuredClone(bundle) as Writable<typeof bundle>;
    expect(typed.entry).toHaveLength(8);
  });

  it('[FHR-1] the validator would have said so: an unknown property, a wrong status, a missing patient', () => {
    expect(faultsOf({ ...order, mood: 'good' })).not.toEqual([]);
    expect(faultsOf({ ...order, status: 'signed' })).not.toEqual([]);
    expect(faultsOf({ ...order, patient: undefined })).not.toEqual([]);
    expect(faultsOf({ ...observations[0], valueQuantity: { value: '5.8' } })).not.toEqual([]);
  });

  it('[FHR-2] one figure stands as an amount; ranges and bounds stand in the instruction', () => {
    expect(order).toMatchObject({
      status: 'active',
      intent: 'plan',
      dateTime: '2026-06-15T09:30:00Z',
      orderer: { display: 'Ada Example, RDN' },
      excludeFoodModifier: [{ text: 'sesame (allergy)' }, { text: 'pork' }],
    });
    const { oralDiet } = order as Extract<typeof order, { resourceType: 'NutritionOrder' }>;
    expect(oralDiet.nutrient).toEqual([
      { modifier: { text: 'Protein' }, amount: { value: 80, unit: 'g', system: 'http://unitsofmeasure.org', code: 'g' } },
      { modifier: { text: 'Fiber' }, amount: { value: 21, unit: 'g', system: 'http://unitsofmeasure.org', code: 'g' } },
    ]);
    // Facts section 3.1, 3.3, 3.6: 25-35 kcal/kg of 72 kg; under 2300 mg; urine 300 mL and 500 to 1000 mL.
    expect(oralDiet.instruction).toContain('Energy: 1800 – 2520 kcal. Protein: 80 g. Sodium: under 2300 mg.');
    expect(oralDiet.instruction).toContain('Fluid: at most 1300 mL (5¼ cups, 43 fl oz).');
  });

  it('[FHR-3] the person is an opaque id: nothing else that stands in the record about who it is', () => {
    const text = JSON.stringify(bundle);
    expect(text).toContain('"Patient/7c1f0c2e-0f3b-4a55-9d0e-6d1b8a2f4e10"');
    expect(text).not.toContain(record.name);
    expect(text).not.toMatch(/birth|female|64/u);
  });

  it('[FHR-4] a result keeps value and unit as entered, by the LOINC code of that unit', () => {
    // 14879-1 is phosphate in mmol/L, 2777-1 in mg/dL: clinical facts sheet, section 4.1.
    expect(observations[1]).toMatchObject({
      code: { coding: [{ system: 'http://loinc.org', code: '14879-1' }], text: 'phosphate' },
      valueQuantity: { value: 2.1, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' },
      effectiveDateTime: '2026-06-05',
      referenceRange: [{ high: { value: 1.45, code: 'mmol/L' } }],
    });
    expect(observations[4]!).toMatchObject({ code: { text: 'urea reduction ratio' } });
    expect(observations[4]).not.toHaveProperty('code.coding');
  });

  it('[FHR-4] a measured weight is a vital sign; dry weight is none and has no code', () => {
    expect(observations[5]).toMatchObject({ code: { text: 'body weight, dry' }, valueQuantity: { value: 72, code: 'kg' } });
    expect(observations[5]).not.toHaveProperty('code.coding');
    expect(observations[6]).toMatchObject({ code: { coding: [{ code: '29463-7' }] }, valueQuantity: { value: 75.6 } });
  });

  it('[FHR-5] nothing signed, nothing exported', () => {
    expect(careBundle({ ...record, prescriptions: [] })).toBeUndefined();
    expect(() => careBundle({ ...record, id: 'A.B. born 1962' })).toThrow(RangeError);
  });

  it('[FHR-1] any client with any result in any unit gives valid R4', () => {
    const result = fc
      .record({
        analyte: fc.constantFrom(...analyteKeys),
        share: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        at: fc.nat(),
        more: fc.boolean(),
      })
      .map(({ analyte, share, at, more }) => {
        const facts = analyteFacts(analyte);
        const units = unitsOf(facts);
        return lab(
          analyte,
          facts.possible[0] + share * (facts.possible[1] - facts.possible[0]),
          units[at % units.length]!,
          '2026-06-05',
          more ? { takenAt: '06:00', hemolyzed: true, lowerNormal: 3, upperNormal: 5, drawn: 'after-dialysis' } : {},
        );
      });
    const kind = fc.constantFrom<WeightKind>('actual', 'dry', 'usual', 'goal', 'after-drain');
    fc.assert(
      fc.property(fc.array(result, { maxLength: 4 }), kind, fc.string(), (labs, weightKind, food) => {
        const client = clientWith({ labs, weighings: [weighing(weightKind, 70)], allergies: [food] });
        const one = careBundle({ ...record, assessments: [{ id: 'assessment-2', assessment: client }] });
        expect(faultsOf(one)).toEqual([]);
      }),
      { numRuns: process.env.PLATEWRIGHT_LONG === undefined ? 60 : 5000 },
    );
  }, 60_000);
});

describe('what is read', () => {
  const observation = (more: object = {}) => ({
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '2823-3' }] },
    subject: { reference: 'Patient/1' },
    effectiveDateTime: '2026-06-05T07:30:00-05:00',
    valueQuantity: { value: 5.2, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' },
    ...more,
  });
  const loinc = (code: string, value: number, unit: string) =>
    observation({
      code: { coding: [{ system: 'http://loinc.org', code }] },
      valueQuantity: { value, unit, system: 'http://unitsofmeasure.org', code: unit },
    });
  const codesOf = (json: unknown) => labsFromFhir(json).issues.map(({ code }) => code);

  it('[FHR-6] what was exported comes back, but for the time of day, which FHIR takes with its zone alone', () => {
    const { value, issues } = labsFromFhir(bundle);
    const kept = hemodialysisClient.labs.filter(({ analyte }) => analyte !== 'ureaReduction').map(({ takenAt: _, ...rest }) => rest);
    expect(value).toEqual(kept);
    expect(issues.map(({ code, place }) => [code, place.heading])).toEqual([
      ['lab-entry-not-read', 'entry[0].resource'],
      ['lab-analyte-not-known', 'entry[5].resource'],
      ['lab-analyte-not-known', 'entry[6].resource'],
      ['lab-analyte-not-known', 'entry[7].resource'],
    ]);
  });

  it('[FHR-6] an Observation, an array or a Bundle; the day and time as the laboratory wrote them', () => {
    const read = [{ analyte: 'potassium', value: 5.2, unit: 'mmol/L', takenOn: '2026-06-05', takenAt: '07:30' }];
    expect(labsFromFhir(observation()).value).toEqual(read);
    expect(labsFromFhir([observation()]).value).toEqual(read);
    expect(labsFromFhir({ resourceType: 'Bundle', entry: [{ resource: observation() }] }).value).toEqual(read);
    expect(faultsOf(observation())).toEqual([]);
  });

  it('[FHR-7] a value without a unit is refused; a unit that contradicts its code or its UCUM code too', () => {
    expect(codesOf(observation({ valueQuantity: { value: 5.2 } }))).toEqual(['lab-unit-missing']);
    expect(codesOf(loinc('22664-7', 60, 'mg/dL'))).toEqual(['lab-unit-not-known']);
    expect(codesOf(loinc('29265-6', 9.2, 'mg/dL'))).toEqual(['lab-unit-not-known']);
    const both = { value: 5.9, unit: 'g/L', system: 'http://unitsofmeasure.org', code: 'g/dL' };
    expect(codesOf(observation({ code: { coding: [{ system: 'http://loinc.org', code: '1751-7' }] }, valueQuantity: both }))).toEqual([
      'lab-unit-not-known',
    ]);
    expect(labsFromFhir(observation({ valueQuantity: { value: 5.2, unit: 'meq/L' } })).value[0]).toMatchObject({ unit: 'mEq/L' });
  });

  it('[FHR-7] an unknown code is reported and nothing is guessed from its name', () => {
    // 3091-6 and 1968-7 stand in some public mappings for molar urea and bicarbonate, wrongly: facts sheet, section 4.1.
    expect(codesOf(loinc('3091-6', 5, 'mmol/L'))).toEqual(['lab-analyte-not-known']);
    expect(codesOf(loinc('1968-7', 22, 'mmol/L'))).toEqual(['lab-analyte-not-known']);
    expect(codesOf(observation({ code: { text: 'Potassium' } }))).toEqual(['lab-analyte-not-known']);
    const code = { toString: '2823-3' };
    expect(codesOf(observation({ code: { coding: [{ system: 'http://loinc.org', code }] } }))).toEqual(['lab-analyte-not-known']);
  });

  it('[CLT-98] before and after dialysis and both limits go out and come back; a code that says the other is told', () => {
    const marked = lab('potassium', 5.2, 'mmol/L', '2026-06-05', { lowerNormal: 3.5, upperNormal: 5.1, drawn: 'before-dialysis' });
    const client = { ...hemodialysisClient, labs: [marked] };
    const written = careBundle(recordOf(client))!;
    expect(faultsOf(written)).toEqual([]);
    expect(labsFromFhir(written).value).toEqual([marked]);
    expect(labsFromFhir(loinc('11064-3', 18, 'mg/dL')).value).toMatchObject([{ drawn: 'after-dialysis' }]);
    expect(codesOf({ ...loinc('11064-3', 18, 'mg/dL'), method: { text: 'drawn before dialysis' } })).toEqual(['lab-drawn-in-conflict']);
  });

  it('[CLT-99] results that were added to the assessment signed for are in the bundle', () => {
    const added = lab('potassium', 4.9, 'mmol/L', '2026-06-14');
    const more = { id: 'added-1', on: '2026-06-15', assessmentId: 'assessment-2', labs: [added], weighings: [] };
    expect(labsFromFhir(careBundle({ ...record, addedResults: [more] })).value).toContainEqual(added);
    expect(labsFromFhir(careBundle({ ...record, addedResults: [{ ...more, assessmentId: 'assessment-1' }] })).value).not.toContainEqual(
      added,
    );
  });

  it('[FHR-7] not final, not a figure, no day, not possible: left out and said', () => {
    expect(codesOf(observation({ status: 'preliminary' }))).toEqual(['lab-not-final']);
    expect(codesOf(observation({ valueQuantity: { value: 5, comparator: '<', unit: 'mmol/L' } }))).toEqual(['lab-value-not-a-number']);
    expect(codesOf(observation({ valueQuantity: undefined, valueString: 'high' }))).toEqual(['lab-value-not-a-number']);
    expect(codesOf(observation({ effectiveDateTime: '2026-06' }))).toEqual(['lab-day-not-read']);
    expect(codesOf(loinc('2823-3', 55, 'mmol/L'))).toEqual(['lab-value-in-question']);
    expect(codesOf(loinc('2823-3', 12, 'mmol/L'))).toEqual(['lab-value-impossible']);
    expect(codesOf(loinc('2160-0', 132.6, 'mg/dL'))).toEqual(['lab-value-in-question']);
    for (const odd of [null, 7, 'text', {}, { resourceType: 'Patient' }]) expect(codesOf(odd)).toEqual(['lab-file-not-read']);
  });

  it('[FHR-8] results of two people in one file are refused as a whole', () => {
    const other = observation({ subject: { reference: 'Patient/2' } });
    expect(labsFromFhir([observation(), other])).toMatchObject({ value: [], issues: [{ code: 'lab-more-than-one-client' }] });
    // The same person, whatever the order of keys.
    const [named, turned] = [
      { reference: 'Patient/1', display: 'A' },
      { display: 'A', reference: 'Patient/1' },
    ];
    const later = { effectiveDateTime: '2026-06-06' };
    expect(labsFromFhir([observation({ subject: named }), observation({ subject: turned, ...later })]).issues).toEqual([]);
  });

  it('[FHR-9] the same result twice is kept once, also in another unit', () => {
    const { value, issues } = labsFromFhir([observation(), observation({ valueQuantity: { value: 5.2, unit: 'mEq/L' } })]);
    expect([value.length, issues.map(({ code }) => code)]).toEqual([1, ['lab-twice']]);
  });

  it('[FHR-10] never throws, whatever comes', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.anything(), (code, valueQuantity, rest) => {
        const { value } = labsFromFhir([{ resourceType: 'Observation', status: 'final', code, valueQuantity, contained: rest }, rest]);
        expect(Array.isArray(value)).toBe(true);
      }),
    );
  });
});

describe('the LOINC table', () => {
  it('[FHR-4] each code once, each with units of its analyte', () => {
    expect(new Set(loincCodes.map(({ code }) => code)).size).toBe(loincCodes.length);
    for (const { analyte, units } of loincCodes) expect(unitsOf(analyteFacts(analyte))).toEqual(expect.arrayContaining([...units]));
    // The last digit of a code checks the others (modulus 10, Luhn): LOINC Users' Guide, appendix on check digits (from memory).
    for (const { code } of loincCodes) expect(checkDigit(code.split('-')[0]!), code).toBe(Number(code.split('-')[1]));
    expect(loincFor('ureaReduction', '%')).toBeUndefined();
  });
});

function checkDigit(digits: string): number {
  const sum = [...digits].reverse().reduce((total, digit, at) => {
    const doubled = Number(digit) * (at % 2 === 0 ? 2 : 1);
    return total + (doubled > 9 ? doubled - 9 : doubled);
  }, 0);
  return (10 - (sum % 10)) % 10;
}

it('[FHR-2] a prescription signed for an assessment that was corrected is sent with the correction, and with every allergy on record', () => {
  const wrong = { ...hemodialysisClient, allergies: ['milk'], labs: [lab('potassium', 6.2, 'mmol/L')] };
  const record = recordOf(wrong);
  const right = { ...wrong, allergies: ['cacahuate'], labs: [lab('potassium', 4.2, 'mmol/L')] };
  const corrected = { ...record, assessments: [{ id: 'right', assessment: right, corrects: 'assessment-2' }, ...record.assessments] };
  const text = JSON.stringify(careBundle(corrected));
  expect(text).toContain('4.2');
  expect(text).not.toMatch(/6\.2|milk/);
  // A newer assessment that corrects nothing adds its allergy to those that were signed for.
  const newer = { ...record, assessments: [{ id: 'newer', assessment: right }, ...record.assessments] };
  expect(JSON.stringify(careBundle(newer))).toMatch(/cacahuate \(allergy\).*milk \(allergy\)/);
});
