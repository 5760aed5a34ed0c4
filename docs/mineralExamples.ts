import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { estimateMinerals } from '#core/recipe/estimateMinerals.ts';
import type { MineralRange } from '#core/recipe/minerals.ts';
import { printedLabel } from '#data/demo/labels.ts';
import { demoFoods } from '#data/demo/recipes.ts';
import { compositionPer100G } from '#data/packages/composition.ts';
import { table } from './table.ts';

/** The worked examples of docs/minerals.md: foods of the demo, whose recipes are written down. */
export async function mineralExamples(): Promise<string> {
  const solver = await openHighsSolver();
  return ['cheddar-medium-2026-09', 'turkey-oven-roasted-2026-09']
    .map((id, at) => {
      const food = Object.values(demoFoods)
        .flat()
        .find(one => one.id === id);
      if (food === undefined) throw new RangeError(`the demo has no food ${id}`);
      const printed = printedLabel(food);
      const estimate = estimateMinerals(readLabel(printed), solver);
      if (estimate.kind !== 'estimate') throw new RangeError(`${id}: ${estimate.because}`);
      const truth = compositionPer100G(food);
      const inServing = (per100G: number) => `${roundHalfUp((per100G * food.serving.grams) / 100, 0)} mg`;
      const { panel, serving, statement } = printed;
      const figures = [
        `protein ${panel.proteinG} g`,
        `sodium ${panel.sodiumMg} mg`,
        `calcium ${panel.calciumMg}`,
        `potassium ${panel.potassiumMg}`,
      ];
      const { absorbedPhosphorus: absorbed, limits, phosphorusDrivers } = estimate;
      const drivers = phosphorusDrivers.map(({ name, mg }) => `${name} (${roundHalfUp(mg, 0)} mg)`).join(', ');
      return [
        `### Example ${at + 1}: ${printed.name}`,
        '',
        `${serving.household} (${serving.grams} g); ${figures.join(', ')}. “${statement}”`,
        '',
        table([
          ['in a serving', 'sure', 'likely', 'nine in ten', 'the recipe holds'],
          ['phosphorus', ...words(estimate.phosphorus), inServing(truth.phosphorusMg)],
          ['of that from additives', ...words(estimate.addedPhosphorus), ''],
          ['absorbed', '', '', `${floorTo(absorbed.lo, 0)} – ${ceilTo(absorbed.hi, 0)} mg`, ''],
          ['potassium', ...words(estimate.potassium), inServing(truth.potassiumMg)],
        ]),
        `Phosphorus comes mostly from: ${drivers}.`,
        ...limits.map(
          ({ name, atMostMg, because }) => `${name} can add at most ${ceilTo(atMostMg, 0)} mg of phosphorus, because ${because}.`,
        ),
        '',
      ].join('\n');
    })
    .join('\n');
}

/** Rounded outward, the likely value to the nearest. */
function words({ sure, likely }: MineralRange): readonly string[] {
  return [
    `${floorTo(sure.lo, 0)} – ${ceilTo(sure.hi, 0)} mg`,
    `${roundHalfUp(likely.mid, 0)} mg`,
    `${floorTo(likely.lo, 0)} – ${ceilTo(likely.hi, 0)} mg`,
  ];
}
