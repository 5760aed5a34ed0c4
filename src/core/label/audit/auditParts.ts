import { nameOf } from '#core/label/figure/figure.ts';
import { sentenceStart, spanText } from '#core/label/figure/spanText.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { Finding } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';
import { mostGramsOf, type PanelView } from './panelView.ts';

interface Whole {
  readonly whole: Nutrient;
  readonly parts: readonly Nutrient[];
}

const everywhere: readonly Whole[] = [
  { whole: 'fatG', parts: ['saturatedFatG', 'transFatG'] },
  { whole: 'totalSugarsG', parts: ['addedSugarsG'] },
];

/** EU and UK carbohydrate leaves fiber out, so fiber is no part of it there. */
const carbohydrateWithFiber: Whole = { whole: 'carbohydrateG', parts: ['fiberG', 'totalSugarsG', 'sugarAlcoholG'] };
const carbohydrateWithoutFiber: Whole = { whole: 'carbohydrateG', parts: ['totalSugarsG', 'sugarAlcoholG'] };

/** Parts that are larger than their whole even when rounding favors them. */
export function auditParts(view: PanelView): readonly Finding[] {
  const european = view.market === 'eu' || view.market === 'uk';
  const found: Finding[] = [];
  for (const { whole, parts } of [...everywhere, european ? carbohydrateWithoutFiber : carbohydrateWithFiber]) {
    const all = view.ranges[whole];
    const least = leastOf(view, parts);
    if (all === undefined || least.sum <= all.hi + dust) continue;
    found.push({
      code: 'part-larger-than-whole',
      about: `${view.prefix}${whole}`,
      message: `${comeTo(least.names)} at least ${spanText({ lo: least.sum, hi: least.sum }, 'g')}, but ${nameOf(whole)} is at most ${spanText({ lo: all.hi, hi: all.hi }, 'g')}.`,
      source: 'the parts of a nutrient are within it, 21 CFR 101.9(c)(2) and (c)(6); Regulation (EU) 1169/2011, Annex I',
    });
  }
  found.push(...auditMass(view, european));
  return found;
}

/** Binary dust of sums and conversions. */
const dust = 1e-9;

function leastOf(view: PanelView, parts: readonly Nutrient[]): { sum: number; names: readonly string[] } {
  let sum = 0;
  const names: string[] = [];
  for (const part of parts) {
    const range = view.ranges[part];
    if (range === undefined || range.lo === 0) continue;
    sum += range.lo;
    names.push(nameOf(part));
  }
  return { sum, names };
}

function comeTo(names: readonly string[]): string {
  return `${sentenceStart(names)} ${names.length === 1 ? 'comes' : 'come'} to`;
}

/** The elements weigh less than the food; sodium at most what sodium carbonate holds of it, 434 mg per g (molar masses). */
const mostSodiumMgPerG = 434;
const mostKcalPerG = 9.02;

function auditMass(view: PanelView, european: boolean): readonly Finding[] {
  const mostGrams = mostGramsOf(view);
  const found: Finding[] = [];
  const macronutrients = leastOf(
    view,
    european ? ['fatG', 'carbohydrateG', 'proteinG', 'fiberG', 'alcoholG'] : ['fatG', 'carbohydrateG', 'proteinG', 'alcoholG'],
  );
  if (macronutrients.sum > mostGrams + dust) {
    found.push({
      code: 'part-larger-than-whole',
      about: `${view.prefix}serving`,
      message: `${comeTo(macronutrients.names)} at least ${spanText({ lo: macronutrients.sum, hi: macronutrients.sum }, 'g')}, but the food they are in weighs at most ${spanText({ lo: mostGrams, hi: mostGrams }, 'g')}.`,
      source: 'a food weighs at least what is in it',
    });
  }
  for (const { key } of view.panel.lines) {
    const least = view.ranges[key]?.lo ?? 0;
    const [most, unit] = mostIn(key, mostGrams);
    if (least <= most + dust) continue;
    found.push({
      code: 'impossible-value',
      about: `${view.prefix}${key}`,
      message: `${sentenceStart([nameOf(key)])} is at least ${spanText({ lo: least, hi: least }, unit)}; ${spanText({ lo: mostGrams, hi: mostGrams }, 'g')} of food cannot hold more than ${spanText({ lo: most, hi: most }, unit)}.`,
      source:
        key === 'energyKcal' || key === 'energyKj'
          ? 'fat, the richest food, gives 9 kcal per g (9.02 by USDA Handbook 74)'
          : 'a food weighs at least what is in it',
    });
  }
  return found;
}

function mostIn(key: PanelKey, grams: number): readonly [number, string] {
  if (key === 'energyKcal') return [grams * mostKcalPerG, 'kcal'];
  if (key === 'energyKj') return [grams * mostKcalPerG * 4.33, 'kJ'];
  if (key === 'sodiumMg') return [grams * mostSodiumMgPerG, 'mg'];
  if (key === 'saltG') return [grams * Math.max(1, (mostSodiumMgPerG / 1000) * 2.5), 'g'];
  const { unit } = nutrients[key];
  return [unit === 'mg' ? grams * 1e3 : unit === 'mcg' ? grams * 1e6 : grams, unit];
}
