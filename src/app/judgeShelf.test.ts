import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { onPlate } from '#core/plate/plateAmounts.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { foodsOf, importLabels } from './importLabels.ts';
import { judgeShelf, tellable } from './judgeShelf.ts';

const yardstick = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;
const bread = { serving: { household: '2 slices', grams: 64 }, panel: { energyKcal: 160, sodiumMg: 20 } };
// The plate of docs/formats.md.
const plate = plateFromJson({
  id: 'on-bread',
  title: 'two slices of low-sodium bread',
  portion: { measure: 'slice', count: 4 },
  companions: [{ food: { id: 'bread', name: 'Low-sodium bread', label: bread }, portion: { measure: 'slice', count: 2 } }],
}).value!;

function surveyOf(csv: string, onProgress?: (done: number, total: number) => void) {
  const foods = foodsOf(importLabels(readTable(new TextEncoder().encode(csv))).value);
  return judgeShelf({ foods, plate, yardstick, ways: { shelf: { foods, plates: [plate] }, keep: tellable } }, onProgress);
}

const csv = `id,name,Serving size,Calories,Sodium
beef,Beef,4 slices (56 g),80,230
ham,Ham,4 slices (56 g),60,400
,Tofu,4 slices (56 g),70,210
,Odd,4 slices (56 g),70,
`;

describe('judgeShelf', () => {
  // Worked by hand: 80 + 160 = 240 kcal against 230 + 20 = 250 mg is 10 over, the slack of the yardstick; 220 kcal against
  // 420 mg is over; 230 kcal against 230 mg is not over. The rule is common practice, no source.
  it('[SUR-1] each food is judged with its companions, and the words are counted', () => {
    const { foods, counts } = surveyOf(csv);
    expect(foods.map(({ food, verdict }) => [food.id, verdict.verdict])).toEqual([
      ['beef', 'nearly'],
      ['ham', 'over'],
      ['row-4', 'fits'],
      ['row-5', "can't tell"],
    ]);
    expect(counts).toEqual({ fits: 1, nearly: 1, over: 1, "can't tell": 1 });
    const held = (at: number, nutrient: 'energyKcal' | 'sodiumMg') => onPlate(plate, foods[at]!.food, nutrient);
    expect([held(0, 'energyKcal').judged, held(0, 'sodiumMg').judged]).toEqual([
      { lo: 240, hi: 240 },
      { lo: 250, hi: 250 },
    ]);
    expect(held(3, 'sodiumMg').missing).toHaveLength(1);
  });

  it('[SUR-2] ways in are looked for where a food is over or nearly, and nowhere else', () => {
    const { foods } = surveyOf(csv);
    expect(foods.map(({ waysIn }) => waysIn !== undefined)).toEqual([true, true, false, false]);
    // Three slices of beef: 60 + 160 = 220 kcal against 172.5 + 20 = 192.5 mg.
    expect(foods[0]?.waysIn?.ways.map(({ what }) => what).join('\n')).toMatch(/3 slices .*220 kcal.*193 mg/);
  });

  it('[SUR-3] progress is told food by food', () => {
    const told: [number, number][] = [];
    surveyOf(csv, (done, total) => told.push([done, total]));
    expect(told).toEqual([1, 2, 3, 4].map(done => [done, 4]));
  });

  it('[SUR-4] a survey of no foods has counts of zero', () => {
    expect(surveyOf('name,sodiumMg\n').counts).toEqual({ fits: 0, nearly: 0, over: 0, "can't tell": 0 });
  });
});
