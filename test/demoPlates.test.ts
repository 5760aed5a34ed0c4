import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { importLabels } from '#app/importLabels.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import type { VerdictWord, Yardstick } from '#core/yardstick/yardstick.ts';
import { type Category, type DemoFood, demoFoods } from '#data/demo/recipes.ts';

const fileOf = (path: string) => readFileSync(new URL(path, new URL('../data/demo/', import.meta.url)));
const foods: readonly DemoFood[] = Object.values(demoFoods).flat();
const labels = new Map(importLabels(readTable(fileOf('labels.csv'))).value.map(({ label }) => [label.printed.id, label]));
const labelOf = (id: string) => labels.get(id)!;

describe('[DEM-11] on its plate', () => {
  /** The trade's rule: sodium in mg no more than energy in kcal on the whole plate, 10 mg slack (common practice, no source). */
  const sodiumAgainstEnergy: Yardstick = {
    id: 'sodium-against-energy',
    title: 'sodium against energy',
    purpose: 'Sodium no more than energy on the whole plate.',
    settings: 'any',
    tests: [
      {
        id: 'sodium-against-energy',
        basis: 'on-plate',
        measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
        atMost: 0,
        slack: 10,
        source: { kind: 'common-practice', text: 'common practice, no source' },
      },
    ],
    classScales: [],
    cautions: [],
  };
  const plateOf = (id: string) => {
    const { value, issues } = plateFromJson(JSON.parse(fileOf(`plates/${id}.json`).toString()));
    return { plate: value!, issues };
  };
  const verdictOf = (id: string, plateId: string) => {
    const { name, sold } = foods.find(food => food.id === id)!;
    const food = { id, name: `${sold.maker.name} ${name}`, label: labelOf(id) };
    return judgePlate({ food, plate: plateOf(plateId).plate, yardstick: sodiumAgainstEnergy, setting: 'ckd-not-on-dialysis' });
  };
  const countsOf = (category: Category, plateId: string) => {
    const counts: Record<VerdictWord, number> = { fits: 0, nearly: 0, over: 0, "can't tell": 0 };
    for (const { id } of demoFoods[category]) counts[verdictOf(id, plateId).verdict] += 1;
    return counts;
  };

  it.each([
    'slices-on-low-sodium-bread',
    'slices-on-white-bread',
    'cereal-with-milk',
    'soup-with-rice',
    'soup-with-salted-rice',
    'soup-with-crackers',
  ])('%s is a plate without issues, and its companions pass the audit', id => {
    const { plate, issues } = plateOf(id);
    expect(issues).toEqual([]);
    for (const { food, withoutSalt } of plate.companions) {
      expect(food.label.findings).toEqual([]);
      expect(withoutSalt?.label.findings ?? []).toEqual([]);
    }
  });

  it('two slices of low-sodium bread are 160 kcal and 20 mg of sodium', () => {
    const [bread] = plateOf('slices-on-low-sodium-bread').plate.companions;
    expect(bread!.food.label.printed.panel).toMatchObject({ energyKcal: 160, sodiumMg: 20 });
  });

  const spread: readonly [Category, string][] = [
    ['sandwich slices', 'slices-on-low-sodium-bread'],
    ['cold cereals', 'cereal-with-milk'],
    ['soups and broths', 'soup-with-rice'],
  ];

  it.each(spread)('%s hold foods that fit, nearly fit, are over and cannot be told', (category, plateId) => {
    const counts = countsOf(category, plateId);
    expect(Math.min(...Object.values(counts)), JSON.stringify(counts)).toBeGreaterThanOrEqual(1);
    expect(counts.fits, JSON.stringify(counts)).toBeGreaterThanOrEqual(6);
    expect(counts.over, JSON.stringify(counts)).toBeGreaterThanOrEqual(6);
  });

  it('the reduced-sodium beef is over by exactly 10 mg', () => {
    const { verdict, tests } = verdictOf('beef-reduced-2026-10', 'slices-on-low-sodium-bread');
    expect(verdict).toBe('nearly');
    expect(tests[0]!.margin).toBe(-10);
  });
});
