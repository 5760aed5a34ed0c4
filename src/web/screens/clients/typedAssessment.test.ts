import { describe, expect, test } from 'vitest';
import { type AssessmentJson, assessmentSchema } from '#core/client/assessment/assessment.ts';
import { assessmentFromJson, assessmentToJson } from '#core/client/assessment/assessmentJson.ts';
import { clientWith } from '#core/client/assessment/clientFixture.ts';
import { conditions } from '#core/client/assessment/vocabularies.ts';
import { settings } from '#core/client/setting.ts';
import { assessmentOf, stillMissing } from './assessmentOf.ts';
import { examplesOf } from './examplesOf.fixture.ts';
import { askedElsewhere, questionsByRow } from './questionsByRow.ts';
import { typedAssessment } from './typedAssessment.ts';
import { typedLab } from './typedResults.ts';

const today = '2026-06-01';

/** Every key that the schema has, in every setting. */
const examples = examplesOf(assessmentSchema).map((json): AssessmentJson => {
  const { value, issues } = assessmentFromJson(json);
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return assessmentToJson(value);
});

function exampleOf(setting: AssessmentJson['treatment']['setting']): AssessmentJson {
  const found = examples.find(({ treatment }) => treatment.setting === setting);
  if (found === undefined) throw new Error(`no example of ${setting}`);
  return found;
}

describe('the assessment form', () => {
  test.each(settings)('loses nothing of the assessment before: every key of the format, %s', setting => {
    const ofSetting = examples.filter(({ treatment }) => treatment.setting === setting);
    expect(ofSetting.length).toBeGreaterThan(0);
    for (const example of ofSetting) expect(assessmentOf(typedAssessment(example, today))).toEqual(example);
  });

  test('the examples hold every alternative', () => {
    expect(examples.some(({ age }) => 'bornOn' in age) && examples.some(({ age }) => 'years' in age)).toBe(true);
    expect(examples.some(({ height }) => height !== undefined && 'feet' in height)).toBe(true);
    expect(examples[0]?.conditions).toEqual(conditions.keys);
    expect(new Set(examples.map(({ appetite }) => appetite)).size).toBe(3);
  });

  test('what belongs to one treatment is left out of another', () => {
    const typed = typedAssessment(exampleOf('peritoneal-dialysis'), today);
    const moved = assessmentOf({ ...typed, fields: { ...typed.fields, setting: 'hemodialysis' } });
    expect(moved?.treatment).toEqual({ setting: 'hemodialysis', place: 'in-center', startedOn: '2026-06-01' });
  });

  test('[CLT-96] neither age nor sex is filled in for anybody', () => {
    const blank = typedAssessment(undefined, today);
    expect(blank.fields).toMatchObject({ sex: '', bornOn: '', years: '', setting: '' });
    expect(assessmentOf(blank)).toBeUndefined();
    expect(stillMissing(blank)).toEqual(['choose the setting', 'choose the sex that formulas go by', 'type the day of birth or the age']);
    expect(stillMissing(typedAssessment(clientWith(), today))).toEqual([]);
  });

  test('what is not known is left out', () => {
    const given = clientWith({ on: today });
    expect(assessmentOf(typedAssessment(given, today))).toEqual({ ...given, missingParts: [] });
  });

  test('a bag of which liters or percent is not typed is refused, and is none of 0', () => {
    const typed = typedAssessment(exampleOf('peritoneal-dialysis'), today);
    const half = assessmentOf({ ...typed, bags: [{ liters: '2', percent: '', labeledAs: 'dextrose' }] });
    expect(assessmentFromJson(JSON.parse(JSON.stringify(half))).issues).toMatchObject([
      { place: { heading: 'treatment.bags[0].percent' } },
    ]);
  });

  test('a question stands at the row it is about, rows without a value left out', () => {
    const rows = [{ value: '' }, { value: '4.8' }, { value: ' ' }, { value: '1.4' }];
    const asked = { told: 'was it mmol/L?', answeredBy: { list: 'labs', at: 1 } } as const;
    expect([...questionsByRow(rows, 'labs', [asked])]).toEqual([[3, 'was it mmol/L?']]);
    expect([...questionsByRow(rows, 'weighings', [asked])]).toEqual([]);
    // Beside three results that are on record already.
    expect([...questionsByRow(rows, 'labs', [{ ...asked, answeredBy: { list: 'labs', at: 3 } }], 3)]).toEqual([[1, 'was it mmol/L?']]);
  });

  test('what no added row answers is asked elsewhere', () => {
    const [ofRecord, ofRow] = [0, 3].map(at => ({ told: `row ${at}`, answeredBy: { list: 'labs' as const, at } }));
    const ofNone = { told: 'was it liters?' };
    expect(askedElsewhere([ofRecord!, ofRow!, ofNone], { labs: 3, weighings: 0 })).toEqual([ofRecord, ofNone]);
  });

  test('a hemolyzed sample read from a file stays one', () => {
    const example = exampleOf('hemodialysis');
    const typed = typedAssessment(example, today);
    expect(example.labs[0]).toMatchObject({ hemolyzed: true });
    expect(assessmentOf({ ...typed, labs: example.labs.map(typedLab) })?.labs).toEqual(example.labs);
  });
});
