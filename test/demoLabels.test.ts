import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { importLabels } from '#app/importLabels.ts';
import type { ReadLabel } from '#core/label/label.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import type { VerdictWord, Yardstick } from '#core/yardstick/yardstick.ts';
import { compositionPer100G } from '#data/demo/composition.ts';
import oddities from '#data/demo/oddities.json' with { type: 'json' };
import { type PanelLine, panelLines } from '#data/demo/panel.ts';
import type { DemoFood } from '#data/demo/recipe.ts';
import { type Category, demoFoods } from '#data/demo/recipes.ts';
import referenceAmounts from '#data/reference-amounts.json' with { type: 'json' };

const folder = new URL('../data/demo/', import.meta.url);
const fileOf = (path: string) => readFileSync(fileURLToPath(new URL(path, folder)));

const foods: readonly DemoFood[] = Object.values(demoFoods).flat();
const imported = importLabels(readTable(fileOf('labels.csv')));
const labels = new Map(imported.value.map(({ label }) => [label.printed.id, label]));
const oddOf = (id: string) => oddities.find(odd => odd.id === id);
const labelOf = (id: string): ReadLabel => labels.get(id)!;

describe('the labels of the demo', () => {
  it('[DEM-8] every row reads back, and nothing is reported but the smudged figure', () => {
    expect([...labels.keys()]).toEqual(foods.map(({ id }) => id));
    expect(imported.issues.map(({ code, place }) => [code, place.heading])).toEqual([['figure-not-readable', 'sodiumMg']]);
  });

  it.each(foods)('[DEM-3] $id prints what the law prints for its recipe', food => {
    const { panel } = labelOf(food.id).printed;
    const per100G = compositionPer100G(food);
    for (const line of panelLines) {
      const figure = panel[line];
      if (figure === undefined || line in (oddOf(food.id)?.printed ?? {})) continue;
      const truth = (per100G[line] * food.serving.grams) / 100;
      const [lo, hi] = lawfulTruth(line, String(figure));
      expect(truth, `${line} ${figure}`).toBeGreaterThanOrEqual(lo - 1e-9);
      expect(truth, `${line} ${figure}`).toBeLessThan(hi + 1e-9);
    }
  });

  it('[DEM-3] a short panel leaves out only what the law calls insignificant, 21 CFR 101.9(c)', () => {
    const shortPanels = foods.filter(({ id }) => labelOf(id).printed.notSignificantSourceOf !== undefined);
    expect(shortPanels.map(({ id }) => id)).toEqual(['puffed-rice-2026-09', 'chicken-broth-low-sodium-2026-10']);
    const insignificant: Partial<Record<PanelLine, number>> = {
      saturatedFatG: 0.5,
      transFatG: 0.5,
      cholesterolMg: 2,
      fiberG: 1,
      totalSugarsG: 1,
      addedSugarsG: 1,
      vitaminDMcg: 0.4,
      calciumMg: 26,
      ironMg: 0.36,
      potassiumMg: 94,
    };
    for (const food of shortPanels) {
      const leftOut = panelLines.filter(line => labelOf(food.id).printed.panel[line] === undefined);
      expect(leftOut.length).toBeGreaterThan(3);
      for (const line of leftOut) {
        expect((compositionPer100G(food)[line] * food.serving.grams) / 100, line).toBeLessThan(insignificant[line]!);
        expect(labelOf(food.id).amounts[line].kind).toBe('known');
      }
    }
  });

  it('[DEM-7] numbers are of number system 4, that no product on sale has, but one from the deli counter', () => {
    const numbers = foods.map(({ id }) => labelOf(id).printed.gtin!);
    expect(numbers.every(gtin => /^\d{12}$/.test(gtin))).toBe(true);
    expect(foods.filter(({ id }) => !labelOf(id).printed.gtin!.startsWith('4')).map(({ id }) => id)).toEqual(['beef-deli-counter-2026-09']);
    const shared = numbers.filter((gtin, at) => numbers.indexOf(gtin) !== at);
    expect(shared).toEqual([labelOf('turkey-hearth-2026-11').printed.gtin]);
  });

  it('the reference amounts are keys of the table', () => {
    const keys = new Set(referenceAmounts.rows.map(({ key }) => key));
    expect(
      foods.filter(({ referenceAmount }) => !keys.has(referenceAmount)).map(({ id, referenceAmount }) => [id, referenceAmount]),
    ).toEqual([]);
  });
});

describe('[DEM-10] the audit', () => {
  it('every oddity is of a food of the demo', () => {
    expect(oddities.filter(({ id }) => !labels.has(id))).toEqual([]);
    expect(oddities.length).toBeGreaterThanOrEqual(14);
  });

  it.each(foods)('finds in $id what it is meant to find and no more', ({ id }) => {
    const codes = new Set(labelOf(id).findings.map(({ code }) => code));
    expect(
      [...codes],
      labelOf(id)
        .findings.map(({ message }) => message)
        .join('\n'),
    ).toEqual(oddOf(id)?.findings ?? []);
  });

  it('the figures that cannot be read are unknown, never zero', () => {
    expect(labelOf('turkey-pastrami-2026-10').amounts.sodiumMg.kind).toBe('unknown');
    expect(labelOf('vegetable-broth-2026-10').amounts.sodiumMg.kind).toBe('unknown');
    expect(labelOf('cinnamon-squares-2026-10').amounts.energyKcal.kind).toBe('unknown');
  });

  it('the misspelt phosphate is found', () => {
    const found = labelOf('chicken-roll-2026-09').additives.filter(additive => additive.class === 'phosphate' && additive.counts);
    expect(found.map(additive => [additive.certainty, additive.found.toLowerCase()])).toEqual([['misspelled', 'sodium phoshpate']]);
  });

  it('the lower sodium ham has potassium from three salts and 35 % less sodium than the honey ham', () => {
    const ham = labelOf('ham-lower-sodium-2026-10');
    const potassium = ham.additives.filter(additive => additive.class === 'potassium' && additive.counts).map(({ found }) => found);
    expect(potassium).toEqual(['POTASSIUM LACTATE', 'POTASSIUM CHLORIDE', 'POTASSIUM PHOSPHATE']);
    expect(Number(ham.printed.panel.sodiumMg) / Number(labelOf('ham-honey-2026-09').printed.panel.sodiumMg)).toBeLessThanOrEqual(0.65);
  });

  it('the hearth-roasted turkey has two labels: a phosphate and more sodium came in', () => {
    const [before, after] = [labelOf('turkey-hearth-2026-08'), labelOf('turkey-hearth-2026-11')];
    expect(after.printed.gtin).toBe(before.printed.gtin);
    expect(after.printed.readOn! > before.printed.readOn!).toBe(true);
    expect(Number(after.printed.panel.sodiumMg)).toBeGreaterThan(Number(before.printed.panel.sodiumMg));
    const phosphates = (label: ReadLabel) => label.additives.filter(additive => additive.class === 'phosphate' && additive.counts).length;
    expect([phosphates(before), phosphates(after)]).toEqual([0, 1]);
  });

  it('the unsalted tomato soup names the salted one', () => {
    expect(labels.has(labelOf('tomato-no-salt-2026-10').printed.unsaltedVersionOf!)).toBe(true);
  });

  it('the injected turkey tells its solution on the front and its phosphate in the statement', () => {
    const turkey = labelOf('turkey-smoked-2026-10');
    expect(turkey.printed.front).toContain('contains up to 15% of a solution');
    expect(turkey.additives.some(additive => additive.class === 'phosphate' && additive.counts)).toBe(true);
  });

  it('the variety pack has three lists, one a cereal', () => {
    const lists = labelOf('variety-pack-2026-10').statement!.ingredients;
    expect(lists.map(({ kind }) => kind)).toEqual(['component', 'component', 'component']);
  });
});

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
    const { name, maker } = foods.find(food => food.id === id)!;
    const food = { id, name: `${maker} ${name}`, label: labelOf(id) };
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

/**
 * The true amounts that may print so: 21 CFR 101.9(c) turned round, ranges half-open. The rows for vitamins and minerals
 * are the increments of FDA's guidance on quantitative amounts, and (c)(8)(iii) for a percent beside them.
 */
function lawfulTruth(line: PanelLine, printed: string): readonly [lo: number, hi: number] {
  const value = Number.parseFloat(printed.replace(/^(<|less than )/, ''));
  const lessThan = /^(<|less than )/.test(printed);
  switch (line) {
    case 'energyKcal':
      if (value <= 5) return value === 0 ? [0, 5] : [5, 7.5];
      return value < 50 ? [value - 2.5, value + 2.5] : value === 50 ? [47.5, 55] : [value - 5, value + 5];
    case 'sodiumMg':
      if (value <= 5) return value === 0 ? [0, 5] : [5, 7.5];
      return value < 140 ? [value - 2.5, value + 2.5] : value === 140 ? [137.5, 145] : [value - 5, value + 5];
    case 'fatG':
    case 'saturatedFatG':
    case 'transFatG':
      if (value <= 0.5) return value === 0 ? [0, 0.5] : [0.5, 0.75];
      return value < 5 ? [value - 0.25, value + 0.25] : value === 5 ? [4.75, 5.5] : [value - 0.5, value + 0.5];
    case 'cholesterolMg':
      if (lessThan) return [2, 5];
      return value === 0 ? [0, 2] : [value === 5 ? 5 : value - 2.5, value + 2.5];
    case 'vitaminDMcg':
      return withPercent(printed, [value - 0.05, value + 0.05], 20);
    case 'ironMg':
      return withPercent(printed, [value - 0.05, value + 0.05], 18);
    case 'calciumMg':
      return withPercent(printed, [value - 5, value + 5], 1300);
    case 'potassiumMg':
      return withPercent(printed, [value - 5, value + 5], 4700);
    default:
      if (lessThan) return [0.5, 1];
      return value <= 1 ? [value === 0 ? 0 : 1, value + 0.5] : [value - 0.5, value + 0.5];
  }
}

function withPercent(printed: string, [lo, hi]: readonly [number, number], dailyValue: number): readonly [number, number] {
  const percent = /(\d+)%/.exec(printed);
  if (percent === null) return [lo, hi];
  const of = Number(percent[1]);
  const [from, to] =
    of === 0
      ? [0, 2]
      : of < 10
        ? [of === 2 ? 2 : of - 1, of + 1]
        : of === 10
          ? [9, 12.5]
          : of < 50
            ? [of - 2.5, of + 2.5]
            : of === 50
              ? [47.5, 55]
              : [of - 5, of + 5];
  return [Math.max(lo, (from * dailyValue) / 100), Math.min(hi, (to * dailyValue) / 100)];
}
