import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intervalFromJson } from '#core/quantity/interval.ts';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import { labelFromJson } from './labelFromJson.ts';
import { readLabel } from './readLabel.ts';
import { readLabelToJson } from './readLabelToJson.ts';

const runs = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;

const formats = readFileSync(new URL('../../../docs/formats.md', import.meta.url), 'utf8');
const example: unknown = JSON.parse(/## Label JSON[\s\S]*?```json\n([\s\S]*?)```/u.exec(formats)?.[1] ?? '');

function codesAndPlaces(value: unknown) {
  return labelFromJson(value).issues.map(({ code, place }) => [code, place.heading]);
}

describe('label JSON', () => {
  test('[LBL-22] the example of docs/formats.md is read whole, without issues or findings', () => {
    const { value, issues } = labelFromJson(example);
    expect(issues).toEqual([]);
    expect(value).toEqual(example);
    expect(readLabel(value!)).toMatchObject({ issues: [], findings: [] });
  });

  test('[LBL-22] every key but the panel may be missing', () => {
    expect(labelFromJson({ panel: {} })).toEqual({
      value: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: {}, otherColumns: [] },
      issues: [],
    });
    expect(codesAndPlaces({ name: 'x' })).toEqual([['panel-missing', 'panel']]);
  });

  // Regulation (EU) 1169/2011, article 32: per 100 g or 100 mL.
  test('[LBL-22] EU and UK panels are per 100 g unless they say otherwise', () => {
    expect(labelFromJson({ panel: {}, market: 'uk' }).value?.basis).toBe('per-100-g');
    expect(labelFromJson({ panel: {}, market: 'uk', basis: 'per-serving' }).value?.basis).toBe('per-serving');
  });

  test('[LBL-22] null is "not given"', () => {
    expect(labelFromJson({ panel: { sodiumMg: null }, name: null, serving: null, otherColumns: null })).toMatchObject({
      value: { panel: {}, serving: {} },
      issues: [],
    });
  });

  test('[LBL-22] keys nobody reads and values of the wrong type are reported by place and left out', () => {
    const value = {
      name: 7,
      colour: 'blue',
      readOn: '2026-02-30',
      serving: { grams: [56], cups: 1 },
      front: ['reduced sodium', 3],
      panel: { sodiumMg: { mg: 5 }, potassiumMg: 360, natriumMg: 1 },
      otherColumns: ['x', { panel: { ironMg: true, fatG: 1 }, speed: 9 }, {}],
    };
    const { value: label } = labelFromJson(value);
    expect(label).toMatchObject({ panel: { potassiumMg: 360 }, front: ['reduced sodium'], otherColumns: [{ panel: { fatG: 1 } }] });
    expect(label).not.toHaveProperty('name');
    expect(label).not.toHaveProperty('readOn');
    expect(codesAndPlaces(value).sort()).toEqual(
      [
        ['value-of-wrong-type', 'name'],
        ['key-not-known', 'colour'],
        ['value-not-allowed', 'readOn'],
        ['value-of-wrong-type', 'serving.grams'],
        ['key-not-known', 'serving.cups'],
        ['value-of-wrong-type', 'front[1]'],
        ['value-of-wrong-type', 'panel.sodiumMg'],
        ['key-not-known', 'panel.natriumMg'],
        ['value-of-wrong-type', 'otherColumns[0]'],
        ['value-of-wrong-type', 'otherColumns[1].panel.ironMg'],
        ['key-not-known', 'otherColumns[1].speed'],
        ['panel-missing', 'otherColumns[2].panel'],
      ].sort(),
    );
  });

  test.each([
    [{ market: 'usa' }, 'market'],
    [{ basis: 'per-100g' }, 'basis'],
    [{ state: 'cooked' }, 'state'],
  ])('[LBL-22] %j: no label, since a wrong guess would make every figure wrong', (more, place) => {
    expect(labelFromJson({ panel: { sodiumMg: 5 }, ...more }).value).toBeUndefined();
    expect(codesAndPlaces({ panel: { sodiumMg: 5 }, ...more })).toEqual([['value-not-allowed', place]]);
  });

  test.each([[null], [undefined], ['x'], [7], [[]], [[{}]]])('[LBL-22] %j is no label', value => {
    expect(labelFromJson(value).value).toBeUndefined();
    expect(codesAndPlaces(value)).toEqual([['label-not-an-object', '']]);
  });

  test('[LBL-22] a key that would change every object is a key like any other', () => {
    const label = JSON.parse(
      '{"__proto__":{"market":"eu"},"panel":{"__proto__":{"sodiumMg":5},"constructor":1,"sodiumMg":140}}',
    ) as unknown;
    const { value } = labelFromJson(label);
    expect(value?.market).toBe('us');
    expect(value?.panel).toEqual({ sodiumMg: 140 });
  });
});

describe('read labels as JSON', () => {
  test('[LBL-22] an unbounded range travels as null and comes back', () => {
    const label = readLabel(labelFromJson({ panel: { proteinG: '10%' } }).value!);
    const json = JSON.parse(JSON.stringify(readLabelToJson(label))) as ReturnType<typeof readLabelToJson>;
    expect(json.amounts.proteinG).toEqual({ kind: 'known', range: [4.5, null], source: 'printed' });
    expect(json.amounts.proteinG.kind === 'known' && intervalFromJson(json.amounts.proteinG.range)).toEqual({
      lo: 4.5,
      hi: Number.POSITIVE_INFINITY,
    });
    expect(json.id).toBeNull();
  });

  test('[LBL-22] the example of docs/formats.md prints sodium 230 as it shows there', () => {
    const json = readLabelToJson(readLabel(labelFromJson(example).value!));
    expect(json.id).toBe('beef-reduced-2026-10');
    expect(json.amounts.sodiumMg).toEqual({ kind: 'known', printed: 230, range: [225, 235], source: 'printed' });
  });
});

describe('whatever is in the JSON', () => {
  const words = fc.oneof(
    fc.constantFrom('470 mg 10%', '<1 g', '0,8 g', '=SUM(A1)', '\0', 'O mg', '1e308', '', '4 slices (56 g)', '2%', 'us', 'eu', 'per-100-g'),
    fc.string(),
    fc.string({ unit: 'binary' }),
  );
  const anything = fc.oneof(words, fc.double(), fc.integer(), fc.constant(null), fc.boolean(), fc.jsonValue());
  const panel = fc.dictionary(fc.oneof(fc.constantFrom<string>(...nutrientKeys, 'saltG', 'energyKj', '__proto__'), fc.string()), anything, {
    maxKeys: 24,
  });
  const serving = fc.record({ household: anything, grams: anything, milliliters: anything, perContainer: anything }, { requiredKeys: [] });
  const label = fc.record(
    {
      id: anything,
      name: anything,
      gtin: anything,
      market: fc.oneof({ weight: 9, arbitrary: fc.constantFrom('us', 'ca', 'eu', 'uk') }, { weight: 1, arbitrary: anything }),
      basis: fc.oneof(
        { weight: 9, arbitrary: fc.constantFrom('per-serving', 'per-100-g', 'per-100-ml') },
        { weight: 1, arbitrary: anything },
      ),
      serving: fc.oneof(serving, anything),
      front: fc.oneof(fc.array(anything), anything),
      panel: fc.oneof({ weight: 9, arbitrary: panel }, { weight: 1, arbitrary: anything }),
      notSignificantSourceOf: anything,
      statement: anything,
      otherColumns: fc.oneof(
        fc.array(fc.oneof(fc.record({ panel, serving }, { requiredKeys: ['panel'] }), anything), { maxLength: 3 }),
        anything,
      ),
      referenceAmount: anything,
    },
    { requiredKeys: ['panel'] },
  );

  test('[LBL-22] reading ends without a fault, with known ranges that are ranges and unknowns that have a reason', () => {
    fc.assert(
      fc.property(fc.oneof({ weight: 9, arbitrary: label }, { weight: 1, arbitrary: anything }), value => {
        const { value: printed } = labelFromJson(value);
        if (printed === undefined) return;
        const read = readLabel(printed);
        const json = JSON.parse(JSON.stringify(readLabelToJson(read))) as ReturnType<typeof readLabelToJson>;
        for (const nutrient of nutrientKeys) {
          const amount = read.amounts[nutrient];
          if (amount.kind === 'unknown') continue;
          expect(amount.range.lo).toBeGreaterThanOrEqual(0);
          expect(amount.range.hi).toBeGreaterThanOrEqual(amount.range.lo);
          const back = json.amounts[nutrient];
          if (back.kind !== 'known') throw new Error(`${nutrient} was lost`);
          const range = intervalFromJson(back.range);
          // Rounding outward takes a figure within 12 digits of a step for the step.
          const dust = 1e-11 * Math.max(1, amount.range.lo);
          expect(range.lo).toBeLessThanOrEqual(amount.range.lo + dust);
          expect(range.hi * (1 + 1e-11)).toBeGreaterThanOrEqual(amount.range.hi);
        }
      }),
      { numRuns: runs },
    );
  });
});
