import { isMost } from '#core/client/aims/limitKind.ts';
import { householdFluid } from '#core/client/prescription/householdFluid.ts';
import type { TargetItem } from '#core/client/prescription/target.ts';
import { evenPattern } from '#core/client/record/record.ts';
import { isOpenEnded } from '#core/quantity/interval.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import type { Test } from '#core/yardstick/yardstick.ts';
import type { HandoutDraft, SignedTarget, SignedTargets } from './handout.ts';
import type { Block, Line } from './handoutPage.ts';
import { outsideRun, programLine } from './line.ts';
import { figure } from './words/numbers.ts';
import type { Asked, Words } from './words/words.ts';

/** What a meal has a share of, in the order of the table. */
const shared = ['sodium', 'potassium', 'phosphorus'] as const;
/** Met over a day, told without shares. */
const daily: readonly TargetItem[] = ['protein', 'fluid', 'energy', 'calcium', 'fiber'];

export function mealsOf({ meals }: Pick<HandoutDraft, 'meals'>): HandoutDraft['meals'] {
  return meals.length > 0 ? meals : evenPattern;
}

/**
 * A target's range in words. Ends go inward to whole units, so that no handout allows more than was signed: 73.6 to 88.9 g is
 * "74 to 88 g", at most 38.9 g is "up to 38 g"; where nothing whole is left, to tenths as signed. A single figure to aim at, 55.9 g, is "about 56 g"; 1000 mL is "up to 1,000 mL". Undefined where no limit is set.
 */
export function askedOf(target: SignedTarget, words: Words): string | undefined {
  const found = askedIn(target, words);
  return found && words.asked(found) + household(target, words);
}

/** Fluid in cups and fluid ounces too: that is what a kitchen measures. */
function household({ item, range, limit = 'within' }: SignedTarget, words: Words): string {
  const measures = item === 'fluid' && range !== undefined ? householdFluid(range, limit) : undefined;
  return measures === undefined ? '' : ` (${words.fluidMeasures(measures)})`;
}

function askedIn({ unit, range, limit = 'within' }: SignedTarget, words: Words): Asked | undefined {
  if (range === undefined) return undefined;
  const { lo, hi } = range;
  const [least, most] = [Math.ceil(lo - 1e-9), Math.floor(hi + 1e-9)];
  const isWhole = least <= most && most > 0;
  const told = (value: number): string => figure(value);
  const withUnit = (value: number): string => `${told(value)} ${words.units[unit]}`;
  if (isOpenEnded(range)) return lo > 0 ? { kind: 'at-least', figure: withUnit(least) } : undefined;
  if (limit === 'at-least') return { kind: 'at-least', figure: withUnit(isWhole ? least : lo) };
  if (limit === 'below') return { kind: 'below', figure: withUnit(isWhole ? most : hi) };
  if (lo > 0 && lo < hi && (!isWhole || least < most)) {
    return { kind: 'between', lo: told(isWhole ? least : lo), hi: withUnit(isWhole ? most : hi) };
  }
  // A single figure is something to aim at where food is counted, and the most where it is sodium, fluid or a mineral.
  const isCeiling = unit === 'mg' || unit === 'mL';
  if (lo === hi && limit === 'within' && !isCeiling) return { kind: 'about', figure: withUnit(lo >= 10 ? roundHalfUp(lo, 0) : lo) };
  return { kind: 'at-most', figure: withUnit(isWhole ? most : hi) };
}

/** A meal's share of a day's upper targets, as the client's yardstick has it; by item. */
export function mealBounds({ targets }: SignedTargets, percent: number): ReadonlyMap<string, Asked> {
  const { tests } = clientYardstick({ targets, avoidedFoods: [], percent, meal: 'a meal', useEstimates: false });
  return new Map(tests.flatMap(test => boundOf(test).map((asked): [string, Asked] => [test.id, asked])));
}

/** A test's own bound, as it is asked of a reader. */
export function boundOf({ atMost, below }: Test): readonly Asked[] {
  const bound = below ?? atMost;
  if (bound === undefined) return [];
  const shown = bound >= 1 ? Math.floor(bound + 1e-9) : bound;
  return [{ kind: below === undefined || shown < bound ? 'at-most' : 'below', figure: `${figure(shown)} mg` }];
}

/** The day and each meal, for what a meal has a share of; empty where nothing of it is bounded. */
export function numbersTable(draft: HandoutDraft, words: Words): readonly Block[] {
  const { prescription } = draft;
  if (prescription === undefined) return [];
  const whole = mealBounds(prescription, 100);
  const meals = mealsOf(draft).map(({ name, percent }) => ({ name, bounds: mealBounds(prescription, percent) }));
  const columns = shared
    .filter(item => whole.has(item))
    .map(item => {
      const target = prescription.targets.find(one => one.item === item);
      const day = target && askedIn(target, words);
      return column(words.targetNames[item], [day, ...meals.map(({ bounds }) => bounds.get(item))], words);
    });
  if (columns.length === 0) return [];
  const heads = [programLine(words.aDay), ...meals.map(({ name }) => mealLine(name, words))];
  return [
    {
      kind: 'table',
      caption: words.numbersCaption,
      head: [words.whatColumn, ...columns.map(({ head }) => head)],
      rows: heads.map((head, at) => ({ head, cells: columns.map(({ cells }) => cells[at] ?? '') })),
    },
  ];
}

/** "Sodium: less than" above figures alone, where all are meant so; else each cell says how it is meant. */
function column(
  name: string,
  all: readonly (Asked | undefined)[],
  words: Words,
): { readonly head: string; readonly cells: readonly string[] } {
  for (const kind of ['below', 'at-most'] as const) {
    const figures = all.flatMap(one => (one?.kind === kind ? [one.figure] : []));
    if (figures.length === all.length) return { head: `${name}: ${words.askedHead[kind]}`, cells: figures };
  }
  return { head: name, cells: all.map(one => (one === undefined ? '' : words.asked(one))) };
}

function mealLine(name: string, words: Words): Line {
  return { by: 'program', runs: [outsideRun(words.meal(name))] };
}

/** "Protein: 74 to 88 g a day." Sodium, potassium and phosphorus too, where they have no most that the table could tell: "at least 3,000 mg". */
export function dayLines({ prescription }: HandoutDraft, words: Words, only = daily): readonly Line[] {
  if (prescription === undefined) return [];
  const { targets } = prescription;
  const inTable = mealBounds(prescription, 100);
  const minerals = shared.filter(item => !inTable.has(item));
  return [...minerals, ...only].flatMap(item => {
    const target = targets.find(one => one.item === item);
    const range = target && askedOf(target, words);
    return range === undefined ? [] : [words.dayTarget(words.targetNames[item], range)];
  });
}

/** "Phosphate additives: none named on the label." where the prescription wants none. */
export function additiveLines({ prescription }: HandoutDraft, words: Words): readonly Line[] {
  const without = (item: TargetItem): boolean => prescription?.targets.some(one => one.item === item && one.range?.hi === 0) ?? false;
  return [
    ...(without('phosphateAdditives') ? [words.noneNamedTarget('phosphate')] : []),
    ...(without('potassiumAdditives') ? [words.noneNamedTarget('potassium')] : []),
  ];
}

export function hasSodium({ prescription }: HandoutDraft): boolean {
  return prescription?.targets.some(({ item, range }) => item === 'sodium' && range !== undefined) ?? false;
}

export function hasFluidLimit({ targets }: SignedTargets): boolean {
  return targets.some(one => one.item === 'fluid' && isMost(one));
}

/** Whether a most is set for sodium: only then is there a number to keep to on labels. */
export function hasSodiumLimit({ prescription }: HandoutDraft): boolean {
  return prescription !== undefined && mealBounds(prescription, 100).has('sodium');
}
