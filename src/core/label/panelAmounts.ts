import { type Amount, type KnownAmount, unknown } from '#core/quantity/amount.ts';
import { energyKcalFromKj, sodiumMgFromSaltG } from '#core/quantity/convert.ts';
import { add, exactly, hull, intersect, interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import type { Amounts, Market } from './label.ts';
import { notSignificantRange } from './notSignificant.ts';
import type { ReadPanel } from './readPanel.ts';

export interface PanelAmounts {
  readonly amounts: Amounts;
  readonly asPrinted: Readonly<Partial<Record<Nutrient, string>>>;
}

type Draft = { -readonly [Key in Nutrient]: Amount };

/**
 * Every nutrient's amount from the lines of a panel and the sentence "not a significant source of". A line that is not
 * there is unknown, never zero. Sodium comes from salt and kilocalories from kilojoules where only those are printed.
 *
 * EU and UK carbohydrate leaves fiber out and the workbench's holds it: where both are printed they are added (source
 * 'computed'); where fiber is not, the printed figure stands and `asPrinted` says that it leaves fiber out.
 */
export function panelAmounts(panel: ReadPanel, market: Market, notSignificant: readonly Nutrient[]): PanelAmounts {
  const amounts: Draft = { ...silent };
  const asPrinted: Partial<Record<Nutrient, string>> = {};
  let salt: Amount = notPrinted;
  let energyKj: Amount = notPrinted;
  for (const { key, amount, words } of panel.lines) {
    if (key === 'saltG') salt = amount;
    else if (key === 'energyKj') energyKj = amount;
    else {
      amounts[key] = amount;
      if (amount.kind === 'unknown' || amount.printed === undefined) asPrinted[key] = words;
    }
  }
  if (salt !== notPrinted) amounts.sodiumMg = joined(amounts.sodiumMg, converted(salt, sodiumMgFromSaltG));
  if (amounts.energyKcal.kind === 'unknown') amounts.energyKcal = joined(amounts.energyKcal, converted(energyKj, energyKcalFromKj));
  for (const nutrient of notSignificant) {
    amounts[nutrient] = joined(amounts[nutrient], { kind: 'known', range: notSignificantRange(nutrient), source: 'printed' });
    asPrinted[nutrient] ??= `not a significant source of ${nutrients[nutrient].name}`;
  }
  if (market === 'eu' || market === 'uk') addFiber(amounts, asPrinted);
  return { amounts, asPrinted };
}

const notPrinted = unknown('not-printed');

const silent = Object.fromEntries(nutrientKeys.map(key => [key, notPrinted])) as Amounts;

/** What two places of one label say about one amount. They must leave something in common, else neither is believed. */
function joined(first: Amount, second: Amount): Amount {
  if (first.kind === 'unknown') return second.kind === 'known' && first.reason !== 'contradiction' ? second : first;
  if (second.kind === 'unknown') return first;
  const range = intersect(first.range, second.range);
  if (range === undefined) return unknown('contradiction');
  return { ...first, range: first.printed === undefined ? range : hull(range, exactly(first.printed)) };
}

function converted(amount: Amount, convert: (value: number) => number): Amount {
  if (amount.kind === 'unknown') return amount;
  return {
    kind: 'known',
    ...(amount.printed === undefined ? {} : { printed: cleanFloat(convert(amount.printed)) }),
    range: interval(cleanFloat(convert(amount.range.lo)), cleanFloat(convert(amount.range.hi))),
    source: amount.source,
  };
}

function addFiber(amounts: Draft, asPrinted: Partial<Record<Nutrient, string>>): void {
  const { carbohydrateG: carbohydrate, fiberG: fiber } = amounts;
  if (carbohydrate.kind === 'unknown') return;
  if (fiber.kind === 'unknown') {
    asPrinted.carbohydrateG = `${asPrinted.carbohydrateG ?? `${carbohydrate.printed} g`}, without fiber`;
    return;
  }
  const bothPrinted = carbohydrate.printed !== undefined && fiber.printed !== undefined;
  amounts.carbohydrateG = {
    kind: 'known',
    ...(bothPrinted ? { printed: cleanFloat(carbohydrate.printed + fiber.printed) } : {}),
    range: add(carbohydrate.range, fiber.range),
    source: 'computed',
  } satisfies KnownAmount;
}
