import { nutrients } from '#core/quantity/nutrients.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import type { Conflict, Driver, MineralEstimate } from './minerals.ts';

/** How an estimate was reached, one sentence each: drivers, what holds an additive down, what is not known, conflicts. */
export function explainRecipe(estimate: MineralEstimate): readonly string[] {
  const { phosphorusDrivers, potassiumDrivers, limits, matchedShare, conflicts } = estimate;
  return [
    ...driversText('phosphorus', phosphorusDrivers),
    ...driversText('potassium', potassiumDrivers),
    ...limits.map(({ name, atMostMg, because }) => `${upper(name)} can add at most ${ceilTo(atMostMg, 0)} mg phosphorus: ${because}.`),
    `Ingredients that make up about ${roundHalfUp(matchedShare * 100, 0)}% of the mass are in the composition table.`,
    ...conflicts.map(conflictText),
  ];
}

/** What would settle it: the one question to ask the maker. */
export function questionForMaker(name: string, serving: string, estimate: MineralEstimate): string {
  const added = estimate.limits.map(one => one.name.toLowerCase());
  const part = added.length === 0 ? '' : `, and how much of the phosphorus comes from the ${added.join(' and ')}`;
  return `How many milligrams of phosphorus and of potassium are in one serving (${serving}) of ${name}${part}? Was that analysed or calculated?`;
}

function driversText(mineral: string, drivers: readonly Driver[]): readonly string[] {
  if (drivers.length === 0) return [];
  const named = drivers.slice(0, 3).map(({ name, mg }) => `${name.toLowerCase()} (about ${roundHalfUp(mg, 0)} mg)`);
  const share = drivers.slice(0, 3).reduce((sum, one) => sum + one.share, 0);
  const lead = share > 0.8 ? 'Nearly all' : share > 0.5 ? 'Most' : 'Much';
  return [`${lead} of the likely ${mineral} comes from ${inWords(named)}.`];
}

function conflictText({ meaning, by }: Conflict): string {
  switch (meaning.kind) {
    case 'printed': {
      const { name, unit, decimals } = nutrients[meaning.nutrient];
      const amount = `${floorTo(by, decimals + 1)} ${unit}`;
      return meaning.side === 'most'
        ? `In conflict: the ingredients bring at least ${amount} more ${name} than the panel allows, so that figure was relaxed.`
        : `In conflict: the ingredients can bring ${amount} less ${name} than the panel prints, so that figure was relaxed.`;
    }
    case 'threshold':
      return `In conflict: no recipe keeps ${meaning.name.toLowerCase()} at ${meaning.percent}% or less, so that limit was relaxed.`;
    case 'declared':
      return `In conflict: no recipe has ${meaning.percent}% of ${meaning.name.toLowerCase()}, so that share was relaxed.`;
    default:
      return 'In conflict: the statement contradicts itself.';
  }
}

function inWords(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1).toLowerCase();
}
