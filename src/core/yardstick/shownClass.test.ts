import { describe, expect, it } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { builtInYardsticks } from './builtInYardsticks.ts';
import { judgePlate } from './judgePlate.ts';

const plate = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const yardstick = builtInYardsticks.find(({ id }) => id === 'potassium-and-phosphorus-classes')!;

function classes(panel: Record<string, number | string>, servings = 1) {
  const food = foodWith('Peaches', { serving: { household: '1/2 cup', grams: 125 }, panel });
  return judgePlate({ food, plate: { ...plate, portion: { servings } }, yardstick }).classes;
}

/** Kidney nutrition facts 7.1, first row: a National Kidney Foundation handout; common practice, not a guideline. */
describe('shownClass', () => {
  it.each([
    [94, 'low'],
    [100, 'low or medium'],
    [150, 'medium'],
    [200, 'medium or high'],
    [250, 'high'],
    [310, 'very high'],
  ])('[YST-19] potassium printed %i mg is %s', (potassiumMg, name) => {
    // A multiple of 10 is taken as rounded to 10 (US label facts 1.2), so that 100 stands for 95 up to 105.
    expect(classes({ potassiumMg })[0]?.name).toBe(name);
  });

  it('[YST-19] a large portion makes a low food very high: 90 mg in half a cup are 360 mg in 2 cups (7.1)', () => {
    expect(classes({ potassiumMg: 90 })[0]?.name).toBe('low');
    expect(classes({ potassiumMg: 90 }, 4)[0]).toMatchObject({ name: 'very high', why: expect.stringContaining('340 – 380 mg as eaten') });
  });

  it('[YST-19] what is not printed is unknown, and a %DV alone is classed by its whole range', () => {
    expect(classes({ potassiumMg: 90 })[1]).toMatchObject({ name: 'unknown', why: expect.stringContaining('not on the label') });
    // 2 % is 94 up to 141 mg by use, 47 up to 141 by law; 4 % is 141 up to 235 mg (21 CFR 101.9(c)(8)(iii)).
    expect(classes({ potassiumMg: '4%' })[0]?.name).toBe('medium or high');
    expect(classes({ potassiumMg: '0%', phosphorusMg: '20%' })).toMatchObject([{ name: 'low' }, { name: 'high' }]);
  });

  it('[YST-17] classes judge nothing; a switched-on bound does', () => {
    const food = foodWith('Peaches', { panel: { potassiumMg: 250 } });
    expect(judgePlate({ food, plate, yardstick })).toMatchObject({
      verdict: "can't tell",
      tests: [],
      why: expect.stringContaining('Potassium'),
    });
    expect(judgePlate({ food, plate, yardstick, switchedOn: ['potassium-at-most'] }).verdict).toBe('over');
  });
});
