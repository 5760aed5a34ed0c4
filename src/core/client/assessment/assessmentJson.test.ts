import { describe, expect, test } from 'vitest';
import { assessmentFromJson, assessmentToJson, resultsFromJson } from './assessmentJson.ts';
import { clientWith, lab, weighing } from './clientFixture.ts';

describe('assessmentFromJson', () => {
  test('[CLT-42] what the format allows comes back as it was', () => {
    const assessment = clientWith({
      treatment: { setting: 'peritoneal-dialysis', method: 'capd', bags: [{ liters: 2, percent: 1.5, labeledAs: 'dextrose' }] },
      height: { feet: 5, inches: 4 },
      labs: [lab('potassium', 4.6, 'mmol/L')],
      medicines: ['raas-inhibitor'],
      missingParts: ['foot'],
    });
    expect(assessmentFromJson(JSON.parse(JSON.stringify(assessment)))).toEqual({ value: assessment, issues: [] });
  });

  test('[CLT-42] is sent as it stands; results and weights are read by themselves', () => {
    expect(assessmentToJson(clientWith())).toEqual(clientWith());
    const results = { weighings: [weighing('dry', 70)], labs: [lab('potassium', 4.6, 'mmol/L')] };
    expect(resultsFromJson(JSON.parse(JSON.stringify(results)))).toEqual({ value: results, issues: [] });
    expect(resultsFromJson({ ...results, more: 1 }).issues[0]?.place.heading).toBe('more');
  });

  test.each([
    ['no sex', { sex: undefined }, 'sex'],
    ['a condition nobody knows', { conditions: ['tired'] }, 'conditions[0]'],
    ['a result without a unit', { labs: [{ analyte: 'potassium', value: 5, unit: '', takenOn: '2026-06-05' }] }, 'labs[0].unit'],
    ['an analyte nobody knows', { labs: [{ analyte: 'vibes', value: 5, unit: 'mg', takenOn: '2026-06-05' }] }, 'labs[0].analyte'],
    [
      'a figure as text',
      { weighings: [{ weight: { value: '70', unit: 'kg' }, kind: 'actual', on: '2026-06-05' }] },
      'weighings[0].weight.value',
    ],
    ['a setting nobody knows', { treatment: { setting: 'spa' } }, 'treatment.setting'],
    [
      'not a number',
      { weighings: [{ weight: { value: Number.NaN, unit: 'kg' }, kind: 'actual', on: '2026-06-05' }] },
      'weighings[0].weight.value',
    ],
  ])('[CLT-42] %s is refused, with its place', (_, more, place) => {
    const { value, issues } = assessmentFromJson({ ...clientWith(), ...more });
    expect(value).toBeUndefined();
    expect(issues[0]?.place.heading).toBe(place);
  });

  test.each([null, 'text', 7, [], {}])('[CLT-42] %j is no assessment', json => {
    expect(assessmentFromJson(json).value).toBeUndefined();
  });

  test('[CLT-42] a misspelt key is refused with its place: a pregnancy is never left alone', () => {
    const { value, issues } = assessmentFromJson({ ...clientWith(), pregnent: true });
    expect(value).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'json-key-not-known', place: { heading: 'pregnent' } }]);
  });
});
