import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plateAmounts } from './plateAmounts.ts';
import { plateFromJson } from './plateFromJson.ts';
import { plateToJson } from './plateToJson.ts';

const formats = readFileSync(new URL('../../../docs/formats.md', import.meta.url), 'utf8');
const example = JSON.parse(/## Plate JSON\s+```json\n([\s\S]*?)```/.exec(formats)?.[1] ?? '');

describe('plateFromJson', () => {
  it('[PLT-8] the example of docs/formats.md is a plate, its companion read from its label', () => {
    const { value, issues } = plateFromJson(example);
    expect(issues).toEqual([]);
    expect(value?.portion).toEqual({ measure: 'slice', count: 4 });
    const totals = plateAmounts(value?.companions ?? []);
    expect(totals.energyKcal.judged).toEqual({ lo: 160, hi: 160 });
    expect(totals.sodiumMg.range).toEqual({ lo: 17.5, hi: 22.5 });
  });

  it('[PLT-8] a fault names its place, what stands there and what was expected', () => {
    const { value, issues } = plateFromJson({ ...example, portion: { measure: 'slice' } });
    expect(value).toBeUndefined();
    expect(issues).toEqual([
      expect.objectContaining({
        code: 'json-not-valid',
        place: { heading: 'portion' },
        found: '{"measure":"slice"}',
        expected: expect.stringContaining('"count"'),
      }),
    ]);
    expect(plateFromJson({ ...example, portion: { grams: 0 } }).value).toBeUndefined();
    expect(plateFromJson({ ...example, portion: { grams: 5, servings: 1 } }).value).toBeUndefined();
    expect(plateFromJson('a plate').value).toBeUndefined();
    expect(plateFromJson(null).value).toBeUndefined();
  });

  it('[PLT-8] a key that nobody reads is reported and left alone', () => {
    const food = { ...example.companions[0].food, densityGPerML: 1 };
    const { value, issues } = plateFromJson({ ...example, companions: [{ ...example.companions[0], food }] });
    expect(value).toBeDefined();
    expect(issues).toEqual([
      expect.objectContaining({ code: 'json-key-not-known', place: { heading: 'companions[0].food.densityGPerML' } }),
    ]);
  });

  it('[PLT-8] what is noticed about a label inside keeps its place', () => {
    const food = { id: 'x', name: 'X', label: { panel: { sodiumMg: 'a lot' } } };
    const { issues } = plateFromJson({ ...example, companions: [{ food, portion: { servings: 1 } }] });
    expect(issues.some(({ place }) => place.heading?.startsWith('companions[0].food.label.'))).toBe(true);
  });

  it('[PLT-8] companions and their unsalted twins are optional', () => {
    const alone = plateFromJson({ id: 'a', title: 'alone', portion: { servings: 1 } });
    expect(alone.value?.companions).toEqual([]);
    const twin = { ...example.companions[0], withoutSalt: { ...example.companions[0].food, id: 'unsalted-bread', name: 'Unsalted bread' } };
    expect(plateFromJson({ ...example, companions: [twin] }).value?.companions[0]?.withoutSalt?.name).toBe('Unsalted bread');
  });

  it('[PLT-8] what is written is read as the same plate, with everything that may be left out and without', () => {
    const bread = { ...example.companions[0].food, densityGPerMl: 0.3, gramsPerMeasure: { slice: 28 } };
    const whole = {
      ...example,
      companions: [{ food: bread, portion: { servings: 1 }, withoutSalt: { ...bread, id: 'twin' } }],
      categories: ['cold cuts'],
    };
    for (const json of [example, whole, { id: 'a', title: 'alone', portion: { servings: 1 } }]) {
      const { value } = plateFromJson(json);
      const written = plateToJson(value!);
      expect(plateFromJson(written)).toEqual({ value, issues: [] });
    }
    const { companions, categories } = plateToJson(plateFromJson(whole).value!);
    expect(companions?.[0]).toMatchObject({ food: { densityGPerMl: 0.3, gramsPerMeasure: { slice: 28 } }, withoutSalt: { id: 'twin' } });
    expect(categories).toEqual(['cold cuts']);
    const bare = plateToJson({ ...plateFromJson(example).value!, companions: [] });
    expect('categories' in bare).toBe('categories' in example);
  });

  it('[PLT-8] a companion or its unsalted twin whose label cannot be read leaves no plate', () => {
    const [companion] = example.companions;
    const broken = { id: 'x', name: 'X', label: { market: 'mars' } };
    const told = (companions: unknown[]) => {
      const { value, issues } = plateFromJson({ ...example, companions });
      expect(value).toBeUndefined();
      return issues.map(({ place }) => place.heading?.split('.label')[0]);
    };
    expect(told([{ ...companion, food: broken }])).toContain('companions[0].food');
    expect(told([companion, { ...companion, withoutSalt: broken }])).toContain('companions[1].withoutSalt');
  });
});
