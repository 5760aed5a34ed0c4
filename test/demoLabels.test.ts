import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { importLabels } from '#app/importLabels.ts';
import type { ReadLabel } from '#core/label/label.ts';
import oddities from '#data/demo/oddities.json' with { type: 'json' };
import { type DemoFood, demoFoods } from '#data/demo/recipes.ts';
import { compositionPer100G } from '#data/packages/composition.ts';
import { type PanelLine, panelLines } from '#data/packages/panelLines.ts';
import referenceAmounts from '#data/reference-amounts.json' with { type: 'json' };
import { lawfulTruth } from './lawfulTruth.ts';

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
      const truth = (per100G[line]! * food.serving.grams) / 100;
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
        expect((compositionPer100G(food)[line]! * food.serving.grams) / 100, line).toBeLessThan(insignificant[line]!);
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
    expect(foods.filter(({ sold }) => !keys.has(sold.referenceAmount)).map(({ id, sold }) => [id, sold.referenceAmount])).toEqual([]);
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
