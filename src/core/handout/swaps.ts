import { portionedAmount } from '#core/plate/plateAmounts.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { judgedRange } from '#core/quantity/amount.ts';
import type { WayIn } from '#core/yardstick/wayIn.ts';
import { keepsFromPotassium } from './aimed.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';
import type { Block, Line } from './handoutPage.ts';
import { energyDensity, kinship } from './kinship.ts';
import { foodRun, joined } from './line.ts';
import { marked } from './marks.ts';
import { inHouseholdMeasure } from './portions.ts';
import { loweredBy, mayRaise } from './swapBounds.ts';
import { whyNotOf } from './whyNot.ts';
import { figure } from './words/numbers.ts';
import type { Words } from './words/words.ts';

/** A page of swaps is read, not searched: so many of a category, a food named so often as the better one (own decision). */
const mostSwaps = 6;
const mostOfOne = 2;
const mostWays = 5;

export interface Swap {
  readonly from: HandoutFood;
  readonly to: HandoutFood;
  readonly kinship: number;
}

/** For each food that is over or nearly the fitting food nearest to it in kind, nearest pairs first; foods of no kin, with a potassium additive, or that may bring more of what is bounded, are not offered. */
function swapsOf(survey: HandoutSurvey, draft: HandoutDraft): readonly Swap[] {
  const { foods } = survey;
  const fitting = foods.filter(one => one.verdict.verdict === 'fits' && !keepsFromPotassium(one, draft));
  const pairs = foods
    .filter(({ verdict }) => verdict.verdict === 'over' || verdict.verdict === 'nearly')
    .flatMap(from => fitting.map(to => ({ from, to, kinship: kinship(from.food, to.food), distance: distance(from, to) })))
    .filter(pair => pair.kinship > 0 && !mayRaise(pair.from, pair.to, survey, draft))
    .sort((a, b) => b.kinship - a.kinship || a.distance - b.distance || order(a.from, b.from) || order(a.to, b.to));
  const swapped = new Set<string>();
  const used = new Map<string, number>();
  const found: Swap[] = [];
  for (const { from, to, kinship: near } of pairs) {
    const times = used.get(to.food.id) ?? 0;
    if (found.length >= mostSwaps || swapped.has(from.food.id) || times >= mostOfOne) continue;
    swapped.add(from.food.id);
    used.set(to.food.id, times + 1);
    found.push({ from, to, kinship: near });
  }
  return found;
}

function distance(a: HandoutFood, b: HandoutFood): number {
  const [one, other] = [energyDensity(a.food), energyDensity(b.food)];
  return one === undefined || other === undefined ? Number.MAX_VALUE : Math.abs(one - other);
}

function order(a: HandoutFood, b: HandoutFood): number {
  return a.food.name === b.food.name ? (a.food.id < b.food.id ? -1 : a.food.id > b.food.id ? 1 : 0) : a.food.name < b.food.name ? -1 : 1;
}

/** The swaps of one category and, below them, less of a food or other company for it, each judged to fit. */
export function swapBlocks(survey: HandoutSurvey, draft: HandoutDraft, words: Words): readonly Block[] {
  const swaps = swapsOf(survey, draft).map(({ from, to }) => {
    const swap = words.swap(foodRun(from.food.name), foodRun(to.food.name), whyNotOf(from, survey), saved(from, to, survey));
    const { sure, possible } = loweredBy(from, to, survey, draft);
    const lowered = [
      ...(sure.length === 0 ? [] : [words.swapLowers(sure, true)]),
      ...(possible.length === 0 ? [] : [words.swapLowers(possible, false)]),
    ];
    return marked(joined([swap, ...lowered]), to, words);
  });
  const ways = survey.foods
    .flatMap(one => {
      const line = one.ways.map(way => wayLine(one, way, survey, words)).find(told => told !== undefined);
      return line === undefined ? [] : [marked(line, one, words)];
    })
    .slice(0, mostWays);
  const points = (lines: readonly Line[]): readonly Block[] => (lines.length === 0 ? [] : [{ kind: 'list', look: 'points', lines }]);
  return [
    ...(swaps.length === 0 && ways.length === 0 ? [{ kind: 'text' as const, line: words.noSwap }] : points(swaps)),
    ...(ways.length === 0
      ? []
      : [{ kind: 'heading' as const, line: { by: 'program' as const, runs: [{ kind: 'words' as const, text: words.smallerTitle }] } }]),
    ...points(ways),
  ];
}

/** What a portion saves in sodium, where both labels print a figure and it is less. */
function saved(from: HandoutFood, to: HandoutFood, { plate }: HandoutSurvey): string | undefined {
  const [before, after] = [from, to].map(({ food }) => portionedAmount(food.label.amounts.sodiumMg, portionFactor(plate.portion, food)));
  if (before?.kind !== 'known' || after?.kind !== 'known') return undefined;
  const [a, b] = [judgedRange(before), judgedRange(after)];
  const less = Math.floor(a.lo - b.hi + 1e-9);
  return a.lo === a.hi && b.lo === b.hi && less > 0 ? `${figure(less, 0)} mg` : undefined;
}

/** What a kitchen measures: whole slices, cups and spoons. More of the companion raises sodium, and another beside it is another meal. */
function wayLine({ food }: HandoutFood, { kind, plate, mixedWith }: WayIn, survey: HandoutSurvey, words: Words): Line | undefined {
  const name = foodRun(food.name);
  switch (kind) {
    case 'smaller-portion':
      if (!('measure' in plate.portion)) return undefined;
      return words.smaller(name, words.portion(plate.portion), words.portion(inHouseholdMeasure(food, survey.plate.portion)));
    case 'half-and-half':
      if (mixedWith === undefined || !('measure' in plate.portion)) return undefined;
      return words.halfAndHalf(name, words.portion(plate.portion), foodRun(mixedWith.food.name), words.portion(mixedWith.portion));
    case 'companion-without-salt':
    case 'other-companion':
      return words.otherCompanion(name, foodRun(plate.companions.map(one => one.food.name).join(' + ')));
    default:
      return undefined;
  }
}
