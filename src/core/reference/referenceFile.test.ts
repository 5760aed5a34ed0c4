import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Fault } from '#core/errors.ts';
import type { LargerTable } from './largerTable.ts';
import { referenceFileFromJson, referenceFileText } from './referenceFile.ts';
import { referenceNutrients } from './referenceFood.ts';

const figure = fc.option(fc.double({ min: 0, max: 100_000, noNaN: true }).map(Math.abs));
const food = fc.record({
  number: fc.string(),
  description: fc.string({ unit: 'binary' }),
  group: fc.option(fc.constantFrom('0100', '1100')),
  per100G: fc.record(Object.fromEntries(referenceNutrients.map(key => [key, figure]))),
  household: fc.array(fc.record({ text: fc.string(), grams: fc.double({ min: 0.1, max: 5_000, noNaN: true }) }), { maxLength: 3 }),
});
const table = fc.record({
  dataset: fc.constantFrom('usda-sr', 'fdc-foundation', 'fdc-sr-legacy'),
  source: fc.string(),
  edition: fc.string(),
  foods: fc.array(food, { maxLength: 5 }),
}) as unknown as fc.Arbitrary<LargerTable>;

test('[REF-12] tables come back from a reference file as they were, unknown as unknown', () => {
  fc.assert(
    fc.property(fc.array(table, { maxLength: 3 }), tables => {
      expect(JSON.parse(JSON.stringify(referenceFileFromJson(referenceFileText(tables), 'x')))).toEqual(JSON.parse(JSON.stringify(tables)));
    }),
  );
});

test('[REF-12] any text gives tables or one fault with the place', () => {
  const whole = JSON.parse(referenceFileText([{ dataset: 'usda-sr', source: 's', edition: 'e', foods: [] }]));
  for (const [wrong, place] of [
    [{}, 'platewrightReference'],
    [{ ...whole, platewrightReference: 2 }, 'platewrightReference'],
    [{ ...whole, nutrients: whole.nutrients.toReversed() }, 'nutrients.0'],
    [{ ...whole, tables: [{ ...whole.tables[0], foods: [['1', 'Carp', null, [1], []]] }] }, 'tables.0.foods.0.3'],
    [{ ...whole, tables: [{ ...whole.tables[0], dataset: 'other' }] }, 'tables.0.dataset'],
  ] as const) {
    expect(() => referenceFileFromJson(JSON.stringify(wrong), 'x.json')).toThrow(`"x.json", at ${place}`);
  }
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), text => {
      try {
        referenceFileFromJson(text, 'x');
      } catch (error) {
        expect(error).toBeInstanceOf(Fault);
        expect((error as Fault).code).toBe('reference-not-valid');
      }
    }),
  );
});
