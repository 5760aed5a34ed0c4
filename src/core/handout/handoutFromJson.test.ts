import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { draftJson } from './handoutFixture.ts';
import { handoutFromJson } from './handoutFromJson.ts';

const formats = readFileSync(new URL('../../../docs/formats.md', import.meta.url), 'utf8');
const example = JSON.parse(/## Handout JSON\s+[\s\S]*?```json\n([\s\S]*?)```/.exec(formats)?.[1] ?? '');

describe('handoutFromJson', () => {
  it('[HND-19] the example of docs/formats.md is a handout without an issue', () => {
    const { value, issues } = handoutFromJson(example);
    expect(issues).toEqual([]);
    expect(value?.prescription?.targets[0]).toEqual({ item: 'sodium', unit: 'mg', range: { lo: 0, hi: 2300 }, limit: 'below' });
    expect(value?.prescription?.targets[2]).toEqual({ item: 'potassium', unit: 'mg' });
  });

  it('[HND-19] what is left out has its default; null is no upper end', () => {
    const target = { item: 'fiber', unit: 'g', range: { lo: 25, hi: null }, limit: 'at-least' };
    const prescription = { ...draftJson.prescription, targets: [target] };
    const { value } = handoutFromJson({ ...draftJson, prescription });
    expect(value).toMatchObject({ language: 'en', notes: [], avoidedFoods: [], meals: [] });
    expect(value?.parts).toEqual(['fridge', 'numbers', 'foods', 'labels', 'swaps', 'shopping']);
    expect(value?.prescription?.targets[0]?.range?.hi).toBe(Number.POSITIVE_INFINITY);
  });

  it.each([
    [
      'another unit than the target has',
      { prescription: { ...draftJson.prescription, targets: [{ item: 'sodium', unit: 'g' }] } },
      'prescription.targets[0]',
    ],
    [
      'a range upside down',
      { prescription: { ...draftJson.prescription, targets: [{ item: 'sodium', unit: 'mg', range: { lo: 9, hi: 1 } }] } },
      'prescription.targets[0].range',
    ],
    [
      'two targets of one item',
      {
        prescription: {
          ...draftJson.prescription,
          targets: [
            { item: 'fluid', unit: 'mL' },
            { item: 'fluid', unit: 'mL' },
          ],
        },
      },
      'prescription.targets',
    ],
    ['a language without words', { language: 'fr' }, 'language'],
    ['a setting that is none', { setting: 'pregnancy' }, 'setting'],
    ['a path as id', { id: '../x' }, 'id'],
    ['the id of the index', { id: 'index' }, 'id'],
    ['a day that is none', { writtenOn: '2026-02-30' }, 'writtenOn'],
    ['both a prescription and a topic', { topic: { yardstickId: 'x' } }, ''],
    ['neither', { prescription: undefined }, ''],
    ['a meal that is none', { meals: [{ name: 'tea', percent: 10 }] }, ''],
    [
      'more than a day of meals',
      {
        meals: [
          { name: 'lunch', percent: 60 },
          { name: 'tea', percent: 60 },
        ],
      },
      '',
    ],
    ['a call line that would not leave the fridge page one page', { callUs: 'x'.repeat(81) }, 'callUs'],
  ])('[HND-19] %s is refused with its place', (_, more, heading) => {
    const json = JSON.parse(JSON.stringify({ ...draftJson, ...more }));
    const { value, issues } = handoutFromJson(json);
    expect(value).toBeUndefined();
    expect(issues.map(({ place }) => place.heading)).toContain(heading);
  });

  it('[HND-19] a key that nobody reads is reported and left alone', () => {
    const { value, issues } = handoutFromJson({ ...draftJson, autor: 'x' });
    expect(value).toBeDefined();
    expect(issues).toMatchObject([{ code: 'json-key-not-known', found: 'autor' }]);
    for (const odd of [null, 'x', [], 3]) expect(handoutFromJson(odd).value).toBeUndefined();
  });
});
