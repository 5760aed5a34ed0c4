/** Servings at the bounds of how they are written, rounded and believed. */
import { describe, expect, test } from 'vitest';
import type { Market, PrintedServing } from '../label.ts';
import { readServing } from './readServing.ts';

const near = (value: number): number => expect.closeTo(value, 9) as number;

function codes(serving: PrintedServing, market: Market = 'us'): readonly string[] {
  return readServing(serving, market).issues.map(({ code }) => code);
}

describe('household measures', () => {
  test.each([
    ['½ cup', 1 / 2, 'cup'],
    ['⅓ cup', 1 / 3, 'cup'],
    ['⅔ cup', 2 / 3, 'cup'],
    ['¼ cup', 1 / 4, 'cup'],
    ['¾ cup', 3 / 4, 'cup'],
    ['⅛ tsp', 1 / 8, 'teaspoon'],
    ['⅜ tsp', 3 / 8, 'teaspoon'],
    ['⅝ tsp', 5 / 8, 'teaspoon'],
    ['⅞ tsp', 7 / 8, 'teaspoon'],
    ['1⁄2 cup', 1 / 2, 'cup'],
    ['2 ½ cups', 2.5, 'cup'],
    ['1-1/2 cups', 1.5, 'cup'],
    ['2 1/4 cups', 2.25, 'cup'],
    ['1,5 cups', 1.5, 'cup'],
    ['2 cups of soup', 2, 'cup'],
    ['3 crackers of rye', 3, 'cracker'],
    ['4 of the crackers', 4, 'cracker'],
    ['2 fluid ounces', 2, 'fluid ounce'],
    ['2 fl', 2, 'fl'],
    ['2 dry oz', 2, 'ounce'],
    ['2 frozen boxes', 2, 'box'],
  ])('[LBL-11] "%s" is %d of "%s"', (household, count, measure) => {
    expect(readServing({ household }, 'us').household).toEqual({ count: near(count), measure });
  });

  test.each([
    ['halves', 'half'],
    ['loaves', 'loaf'],
    ['leaves', 'leaf'],
    ['cookies', 'cookie'],
    ['brownies', 'brownie'],
    ['pies', 'pie'],
    ['smoothies', 'smoothie'],
    ['potatoes', 'potato'],
    ['tomatoes', 'tomato'],
    ['fries', 'fry'],
    ['berries', 'berry'],
    ['bow ties', 'bow tie'],
    ['peaches', 'peach'],
    ['dishes', 'dish'],
    ['boxes', 'box'],
    ['glasses', 'glass'],
    ['glass', 'glass'],
    ['ribs', 'rib'],
    ['asparagus', 'asparagus'],
    ['pcs', 'pc'],
  ])('[LBL-11] one of "%s" is a "%s"', (words, measure) => {
    expect(readServing({ household: `2 ${words}` }, 'us').household?.measure).toBe(measure);
  });

  test('[LBL-11] commas, semicolons and strokes part it; a comma within a number and a fraction do not', () => {
    for (const household of ['2 slices, 56 g', '2 slices; 56 g', '2 slices/56 g', '2 slices (56 g)', '56 g/2 slices'])
      expect(readServing({ household }, 'us')).toMatchObject({ household: { count: 2, measure: 'slice' }, grams: { printed: 56 } });
  });

  test('[LBL-11] a count without a name, nothing at all and a count with two numbers are no measure', () => {
    for (const household of ['4', '0 cups', '1/0 cup', '0/2 cup', '1 cup 2 tbsp', '4 of']) {
      expect(readServing({ household }, 'us').household).toBeUndefined();
      expect(codes({ household })).toEqual(['serving-not-readable']);
    }
  });

  test('[LBL-11] a million is believed, more is not; two hundred characters are read, more are not', () => {
    expect(readServing({ household: '1000000 slices' }, 'us').household?.count).toBe(1_000_000);
    expect(codes({ household: '1000001 slices' })).toEqual(['serving-not-readable']);
    expect(codes({ household: '4 slices'.padEnd(200) })).toEqual([]);
    expect(codes({ household: '4 slices'.padEnd(201) })).toEqual(['serving-not-readable']);
  });
});

describe('grams and milliliters', () => {
  // 21 CFR 101.9(b)(7)(ii): whole from 5 up, halves from 2 to 5, tenths below; finer prints, and coarser ones, by their last place.
  test.each<[string, Market, number, number, number]>([
    ['57.0 g', 'us', 57, 56.5, 57.5],
    ['5.5 g', 'us', 5.5, 5.45, 5.55],
    ['5 g', 'us', 5, 4.75, 5.5],
    ['3 g', 'us', 3, 2.75, 3.25],
    ['2.5 g', 'us', 2.5, 2.25, 2.75],
    ['2.3 g', 'us', 2.3, 2.25, 2.35],
    ['2 g', 'us', 2, 1.95, 2.25],
    ['0.02 g', 'us', 0.02, 0.015, 0.025],
    ['1 g', 'us', 1, 0.95, 1.05],
    // A fraction tells no place; a tenth, but never less than half of it.
    ['1/2 g', 'us', 0.5, 0.45, 0.55],
    ['1/20 g', 'us', 0.05, 0.025, 0.075],
    ['0.5 kg', 'us', 500, 450, 550],
    // Other markets have no such steps.
    ['2.5 g', 'ca', 2.5, 2.45, 2.55],
    ['0,05 kg', 'eu', 50, 45, 55],
    ['56 g', 'uk', 56, 55.5, 56.5],
  ])('[LBL-11] "%s" in %s is %d, range %d to %d', (printed, market, value, lo, hi) => {
    const expected = { printed: value, range: { lo: near(lo), hi: near(hi) } };
    expect(readServing({ grams: printed }, market).grams).toEqual(expected);
    expect(readServing({ household: `1 piece (${printed})` }, market).grams).toEqual(expected);
  });

  test.each<[string, object]>([
    ['2 g', { grams: { printed: 2 } }],
    ['2 gram', { grams: { printed: 2 } }],
    ['2 grams', { grams: { printed: 2 } }],
    ['2 kg', { grams: { printed: 2000 } }],
    ['2 ml', { milliliters: { printed: 2 } }],
    ['2 cl', { milliliters: { printed: 20 } }],
    ['2 L', { milliliters: { printed: 2000 } }],
  ])('[LBL-11] "%s" is %j', (household, expected) => {
    const { issues, ...read } = readServing({ household }, 'us');
    expect(read).toMatchObject(expected);
    expect(Object.keys(read)).toEqual(Object.keys(expected));
    expect(issues).toEqual([]);
  });

  test('[LBL-11] a comma for thousands is read in the US, and not guessed in the EU', () => {
    expect(readServing({ household: '1,200 g' }, 'us').grams?.printed).toBe(1200);
    expect(codes({ household: '1,200 g' }, 'eu')).toEqual(['serving-not-readable']);
    expect(codes({ household: '1,200 g' }, 'uk')).toEqual([]);
  });

  // The field's 56 g stand for 55.5 to 56.5 g.
  test('[LBL-11] the words may differ from the field by its rounding', () => {
    for (const words of ['55.5 g', '56.5 g']) expect(codes({ household: words, grams: 56 })).toEqual([]);
    for (const words of ['55.4 g', '56.6 g']) expect(codes({ household: words, grams: 56 })).toEqual(['serving-disagrees']);
    expect(codes({ household: '1 cup (240 mL)', grams: 250 })).toEqual([]);
    expect(codes({ household: '1 cup (240 mL)', milliliters: 250 })).toEqual(['serving-disagrees']);
    expect(readServing({ household: '4 slices (2000000 g)', grams: 56 }, 'us')).toMatchObject({ grams: { printed: 56 }, issues: [] });
  });

  test('[LBL-11] a field holds one quantity in its own unit, up to a million, in up to two hundred characters', () => {
    expect(readServing({ grams: '56' }, 'us').grams?.printed).toBe(56);
    expect(readServing({ grams: 1_000_000 }, 'us').grams?.printed).toBe(1_000_000);
    expect(codes({ grams: '56 g'.padEnd(200) })).toEqual([]);
    for (const grams of ['56 g / 2 oz', '56 mL', 1_000_001, '56 g'.padEnd(201)]) expect(codes({ grams })).toEqual(['serving-not-readable']);
    expect(codes({ milliliters: '56 g' })).toEqual(['serving-not-readable']);
    expect(codes({ household: '', grams: '', milliliters: '', perContainer: '' })).toEqual([]);
  });
});

describe('servings per container', () => {
  // 21 CFR 101.9(b)(8)(i): whole servings, halves from 2 to 5.
  test.each([
    [1, 0.5, 1.5],
    [2, 1.75, 2.25],
    [5, 4.75, 5.25],
    [5.5, 5, 6],
    [1_000_000, 999_999.5, 1_000_000.5],
  ])('[LBL-11] %d is %d to %d', (perContainer, lo, hi) => {
    expect(readServing({ perContainer }, 'us').perContainer).toEqual({ printed: perContainer, range: { lo, hi } });
  });

  test('[LBL-11] what is too much or too long is no number of servings', () => {
    expect(readServing({ perContainer: '1,200' }, 'eu').perContainer?.printed).toBe(1200);
    expect(codes({ perContainer: 'Varies'.padEnd(200) })).toEqual([]);
    for (const perContainer of [1_000_001, -1, 'varies'.padEnd(201), '8'.padEnd(201)])
      expect(codes({ perContainer })).toEqual(['serving-not-readable']);
    expect(codes({ perContainer: '8'.padEnd(200) })).toEqual([]);
  });
});
