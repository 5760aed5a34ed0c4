import { recordOf } from '#core/json/recordOf.ts';
import { notSignificantRange } from '#core/label/figure/notSignificant.ts';
import { type Amount, type KnownAmount, unknown } from '#core/quantity/amount.ts';
import { energyKcalFromKj, sodiumMgFromSaltG } from '#core/quantity/convert.ts';
import { add, exactly, hull, intersect, interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import type { Amounts, Market } from '../label.ts';
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
  let saltWords = '';
  let energyWords = '';
  for (const { key, amount, words } of panel.lines) {
    if (key === 'saltG') {
      salt = amount;
      saltWords = words;
    } else if (key === 'energyKj') {
      energyKj = amount;
      energyWords = words;
    } else {
      amounts[key] = amount;
      if (amount.kind === 'unknown' || amount.printed === undefined) asPrinted[key] = words;
    }
  }
  if (salt !== notPrinted) {
    if (amounts.sodiumMg.kind === 'unknown') asPrinted.sodiumMg = `${saltWords}, as salt`;
    amounts.sodiumMg = joined(amounts.sodiumMg, sodiumFromSalt(salt));
  }
  if (energyKj !== notPrinted && amounts.energyKcal.kind === 'unknown') {
    asPrinted.energyKcal = energyWords;
    amounts.energyKcal = joined(amounts.energyKcal, energyFromKj(energyKj));
  }
  for (const nutrient of notSignificant) {
    amounts[nutrient] = joined(amounts[nutrient], { kind: 'known', range: notSignificantRange(nutrient), source: 'printed' });
    asPrinted[nutrient] ??= `not a significant source of ${nutrients[nutrient].name}`;
  }
  if (market === 'eu' || market === 'uk') addFiber(amounts, asPrinted);
  return { amounts, asPrinted };
}

const notPrinted = unknown('not-printed');

const silent = recordOf(nutrientKeys, () => notPrinted);

/** What two places of one label say about one amount. They must leave something in common, else neither is believed. */
function joined(first: Amount, second: Amount): Amount {
  // Where one place is silent, the other tells: salt that is not legible is not sodium that is not printed.
  if (first.kind === 'unknown')
    return first.reason === 'not-printed' || (second.kind === 'known' && first.reason !== 'contradiction') ? second : first;
  if (second.kind === 'unknown') return first;
  const range = intersect(first.range, second.range);
  if (range === undefined) return unknown('contradiction');
  return { ...first, range: first.printed === undefined ? range : hull(range, exactly(first.printed)) };
}

function sodiumFromSalt(salt: Amount): Amount {
  return salt.kind === 'unknown'
    ? salt
    : converted(salt, sodiumMgFromSaltG, sodiumMgFromSaltG(salt.range.lo), sodiumMgFromSaltG(salt.range.hi));
}

/**
 * Panels compute kJ and kcal from separate factors (Regulation (EU) 1169/2011, Annex XIV: 17 and 4 for carbohydrate, 37 and 9
 * for fat), so the kcal that a kJ figure stands for lies between kJ ÷ 4.33 and kJ ÷ 4.0: 1200 kJ is 277 to 300 kcal.
 */
function energyFromKj(kj: Amount): Amount {
  return kj.kind === 'unknown' ? kj : converted(kj, energyKcalFromKj, kj.range.lo / 4.33, kj.range.hi / 4);
}

/** A figure in another measure than the printed one: computed, and never taken for the print itself. */
function converted(amount: KnownAmount, convert: (value: number) => number, lo: number, hi: number): Amount {
  return {
    kind: 'known',
    ...(amount.printed === undefined ? {} : { printed: cleanFloat(convert(amount.printed)) }),
    range: interval(cleanFloat(lo), cleanFloat(hi)),
    source: 'computed',
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
