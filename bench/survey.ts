import { readFileSync } from 'node:fs';
import { readTable } from '#adapters/files/readTable.ts';
import { foodsOf, importLabels } from '#app/importLabels.ts';
import { judgeShelf, tellable } from '#app/judgeShelf.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { best, figure } from './measure.ts';

const demo = new URL('../data/demo/', import.meta.url);

/** The demo shelf grown to a country's: each label again and again, its sodium and energy moved by a seeded walk. */
export function grownShelf(size: number): PlateFood[] {
  const labels = importLabels(readTable(readFileSync(new URL('labels.csv', demo)))).value;
  const foods = foodsOf(labels);
  const grown: PlateFood[] = [];
  let seed = 1;
  const random = (): number => {
    seed = (seed * 48271) % 2147483647;
    return seed / 2147483647;
  };
  for (let index = 0; index < size; index++) {
    const food = foods[index % foods.length]!;
    const { panel, unsaltedVersionOf } = food.label.printed;
    const copy = Math.floor(index / foods.length);
    const moved: PrintedLabel = {
      ...food.label.printed,
      id: `food-${index}`,
      name: `${food.name} ${copy}`,
      ...(unsaltedVersionOf === undefined ? {} : { unsaltedVersionOf: `${unsaltedVersionOf} ${copy}` }),
      panel: { ...panel, sodiumMg: 10 * Math.round(70 * random()), energyKcal: 10 * Math.round(5 + 20 * random()) },
    };
    grown.push({
      id: `food-${index}`,
      name: `${food.name} ${copy}`,
      label: { ...readLabel({ ...moved, statement: '' }), statement: food.label.statement!, additives: food.label.additives },
    });
  }
  return grown;
}

/** 100,000 labels that were read before, judged on a plate, with ways in for those that fail. */
export function benchSurvey(): void {
  const plate = plateFromJson(JSON.parse(readFileSync(new URL('plates/slices-on-low-sodium-bread.json', demo), 'utf8'))).value as Plate;
  const sizes = [1_000, 10_000, 100_000];
  const foods = grownShelf(100_000);
  for (const yardstick of builtInYardsticks) {
    if (!['low-in-sodium-as-eaten'].includes(yardstick.id) && yardstick.settings === 'any') continue;
    for (const size of yardstick.id === 'low-in-sodium-as-eaten' ? sizes : [100_000]) {
      const shelf = foods.slice(0, size);
      let failing = 0;
      const seconds = best(
        () => {
          const { counts } = judgeShelf({
            foods: shelf,
            plate,
            yardstick,
            ways: { shelf: { foods: shelf, plates: [plate] }, keep: tellable },
          });
          failing = counts.over + counts.nearly;
        },
        size < 100_000 ? 5 : 2,
      );
      figure(
        `survey of ${size.toLocaleString('en-US')}, ${failing.toLocaleString('en-US')} failing, ${yardstick.id}, seconds`,
        seconds,
        size === 100_000 ? 'under 5' : 'growth',
      );
    }
  }
  const plain = best(() => {
    let fits = 0;
    for (const { label } of foods) {
      const { sodiumMg, energyKcal } = label.amounts;
      if (sodiumMg.kind === 'known' && energyKcal.kind === 'known' && (sodiumMg.printed ?? 0) + 20 <= (energyKcal.printed ?? 0) + 160)
        fits += 1;
    }
    return fits;
  }, 5);
  figure('  yardstick: one comparison a food, no ranges, reasons or ways in', plain, 'same foods, same run');
}
