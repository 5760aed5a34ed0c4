import { kilogramsPerPound } from '#core/client/formulas/bodyUnits.ts';
import { smallestMargin } from '#core/guide/againstBound.ts';
import { floorTo } from '#core/quantity/rounding.ts';
import { byAimRank } from '#core/yardstick/aimOrder.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { aimMarks, keepsFromPotassium, rankOf } from './aimed.ts';
import { avoidedRun } from './avoidedRun.ts';
import { isJudged } from './foodSections.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';
import type { Block, FoodRow, Line, Section } from './handoutPage.ts';
import { lookFor } from './labelSteps.ts';
import { authorLine, programLine } from './line.ts';
import { marksOf } from './marks.ts';
import { dayLines, hasSodium, numbersTable } from './numbers.ts';
import { portionWords } from './portions.ts';
import { topicRules } from './topicRule.ts';
import { figure } from './words/numbers.ts';
import type { Words } from './words/words.ts';

/** The fridge page is one page of big type: so many foods, of so many letters each with maker (own decision, tried on A4 and Letter). */
const mostPicks = 4;
const picksByWideTable = 2;
/** A name and its portion. */
const linesOfPick = 2;
const longestPick = 70;

/** One page: numbers, best picks with portions, words to look for, when to call. */
export function fridgeSection(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): Section {
  return {
    id: 'fridge',
    title: words.sectionTitle.fridge,
    blocks: [
      ...numbers(draft, surveys, words),
      ...looks(draft, surveys, words),
      ...picks(draft, surveys, words),
      ...callBlocks(draft, words),
    ],
  };
}

function numbers(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Block[] {
  const heading = (text: string): Block => ({ kind: 'heading', line: programLine(text) });
  if (draft.prescription === undefined) {
    return [heading(words.topicNumbersTitle), { kind: 'list', look: 'points', lines: topicRules(surveys, words) }];
  }
  const lines = [...(hasSodium(draft) ? [] : [words.noSodiumNumber]), ...dayLines(draft, words, ['protein', 'fluid'])];
  return [heading(words.sectionTitle.numbers), ...table(draft, words), ...points(lines)];
}

/** Its heading says what it is. */
function table(draft: HandoutDraft, words: Words): readonly Block[] {
  return numbersTable(draft, words).map(block => (block.kind === 'table' ? { ...block, caption: '' } : block));
}

function points(lines: readonly Line[]): readonly Block[] {
  return lines.length === 0 ? [] : [{ kind: 'list', look: 'points', lines }];
}

/** Foods whose label tells all that was signed before others, then by the client's aims, then those with the most to spare that are no close call, category by category in turn; long names stay on the list of foods. */
function picks(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Block[] {
  const ranked = surveys.filter(isJudged).map(survey => best(survey, draft).map(one => shortRow(one, survey, draft, words)));
  const turns = ranked.flatMap(foods => foods.map((row, turn) => ({ row, turn }))).sort((a, b) => a.turn - b.turn);
  const isWide = table(draft, words).some(block => block.kind === 'table' && block.head.length > 2);
  const rows = thatStand(
    turns.map(({ row }) => row),
    linesOfPick * (isWide ? picksByWideTable : mostPicks),
  );
  const heading: Block = { kind: 'heading', line: programLine(words.bestPicks) };
  const none = surveys.length > 0 && !surveys.some(isJudged) ? words.nothingBounds : words.noneFits;
  if (rows.length === 0) return [heading, { kind: 'text', line: none }];
  const { aims = [] } = draft;
  return [heading, ...(aims.length === 0 ? [] : [{ kind: 'text' as const, line: words.pickedFor(aims) }]), { kind: 'foods', rows }];
}

/** The first rows, as many as stand in so many lines; what is told of a food takes a line of its own. */
function thatStand(rows: readonly FoodRow[], lines: number): readonly FoodRow[] {
  let used = 0;
  return rows.filter(({ told }) => {
    used += linesOfPick + told.length;
    return used <= lines;
  });
}

function best(survey: HandoutSurvey, draft: HandoutDraft): readonly HandoutFood[] {
  const tests = testsJudged(survey.yardstick, survey.switchedOn);
  const margin = (one: HandoutFood): number => smallestMargin(tests, one.verdict) ?? 0;
  const untold = ({ notTold = [] }: HandoutFood): number => notTold.length;
  return survey.foods
    .filter(one => one.verdict.verdict === 'fits' && !one.verdict.closeCall && !one.verdict.estimated && !keepsFromPotassium(one, draft))
    .filter(({ food }) => food.name.length + (food.label.printed.maker ?? '').length <= longestPick)
    .map(one => ({ one, rank: rankOf(one, survey, draft) }))
    .sort(
      (a, b) =>
        untold(a.one) - untold(b.one) ||
        byAimRank(a.rank, b.rank) ||
        margin(b.one) - margin(a.one) ||
        (a.one.food.id < b.one.food.id ? -1 : 1),
    )
    .map(({ one }) => one);
}

/** The heading says that it is for a meal: the row tells the portion alone. */
function shortRow(one: HandoutFood, survey: HandoutSurvey, draft: HandoutDraft, words: Words): FoodRow {
  const { food } = one;
  const { plate } = survey;
  const { maker } = food.label.printed;
  const portion = portionWords(words, food, plate.portion);
  return {
    foodId: food.id,
    name: food.name,
    keepTo: [maker === undefined ? portion : `${portion}, ${maker}`],
    told: [...marksOf(one, words), ...aimMarks(one, survey, draft, words)],
  };
}

function looks(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Block[] {
  const { sodium, phosphate, potassium, avoided } = lookFor(draft, surveys);
  const { fridgeLook } = words;
  const names = avoided.map(word => avoidedRun(word, draft.language));
  const lines = [
    ...(sodium ? [fridgeLook.sodium] : []),
    ...(phosphate ? [fridgeLook.phosphate] : []),
    ...(potassium ? [fridgeLook.potassium] : []),
    ...(names.length > 0 && names.map(({ text }) => text).join('').length <= longestPick ? [words.fridgeAvoid(names)] : []),
  ];
  return lines.length === 0 ? [] : [{ kind: 'heading', line: programLine(words.lookFor) }, ...points(lines)];
}

/** When to call, in every handout: on the fridge page, else as a part of its own. */
export function callBlocks(draft: HandoutDraft, words: Words, withHeading = true): readonly Block[] {
  const { setting, callUs } = draft;
  return [
    ...(withHeading ? [{ kind: 'heading' as const, line: programLine(words.sectionTitle.call) }] : []),
    ...(callUs === undefined ? [] : [{ kind: 'text' as const, line: authorLine(callUs) }]),
    { kind: 'list', look: 'call', lines: [words.emergency] },
    { kind: 'text', line: words.callToday },
    { kind: 'list', look: 'points', lines: [...words.callWhen[setting], ...weightLines(draft, words)] },
  ];
}

/** The client's own gain of weight, rounded down so that nobody calls later than meant; on a topic's page 2 kg in 2 days for peritoneal dialysis. */
function weightLines({ setting, weightGain, prescription }: HandoutDraft, words: Words): readonly Line[] {
  const topic: HandoutDraft['weightGain'] = setting === 'peritoneal-dialysis' ? { kg: 2, within: '2-days' } : undefined;
  const told = weightGain ?? (prescription === undefined ? topic : undefined);
  if (told === undefined) return setting === 'hemodialysis' ? [words.weightGainNotKnown] : [];
  return [words.weightGain[told.within](figure(floorTo(told.kg, 1)), figure(floorTo(told.kg / kilogramsPerPound, 1)))];
}
