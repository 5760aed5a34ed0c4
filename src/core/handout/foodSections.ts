import type { AdditiveClass } from '#core/additive/additive.ts';
import { byWhatIsTold } from '#core/yardstick/byLabel.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { aimMarks, keepsFromPotassium } from './aimed.ts';
import { companionsRun } from './companions.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';
import type { Block, FoodRow, Line } from './handoutPage.ts';
import { authorLine, foodRun, joined, line, outsideRun, programLine } from './line.ts';
import { marksOf } from './marks.ts';
import { boundOf, mealsOf } from './numbers.ts';
import { dayPortion, portionWords, sodiumOf } from './portions.ts';
import { whyNotOf } from './whyNot.ts';
import type { Words } from './words/words.ts';

const alphabet = new Intl.Collator('en', { numeric: true });

/** Foods with one verdict, by name. */
function foodsThat(verdict: 'fits' | "can't tell", { foods }: HandoutSurvey): readonly HandoutFood[] {
  return foods
    .filter(one => one.verdict.verdict === verdict)
    .sort((a, b) => alphabet.compare(a.food.name, b.food.name) || (a.food.id < b.food.id ? -1 : 1));
}

/** A survey whose yardstick tests nothing has judged nothing: its foods are neither fitting nor doubtful. */
export function isJudged({ yardstick, switchedOn }: HandoutSurvey): boolean {
  return testsJudged(yardstick, switchedOn).length > 0;
}

export function categoryHeading({ category }: HandoutSurvey): Block {
  return { kind: 'heading', line: authorLine(category.title ?? category.category) };
}

/** Why a category has no foods to show; undefined when it has. */
function nothingHere(survey: HandoutSurvey, words: Words): Line | undefined {
  if (!isJudged(survey)) return words.nothingBounds;
  if (survey.foods.length === 0) return words.noneChecked;
  return foodsThat('fits', survey).length === 0 ? words.noneFits : undefined;
}

/** The foods of one category that fit, each with what to keep to. */
export function foodBlocks(survey: HandoutSurvey, draft: HandoutDraft, words: Words): readonly Block[] {
  const heading = categoryHeading(survey);
  const none = nothingHere(survey, words);
  if (none !== undefined) return [heading, { kind: 'text', line: none }];
  const meal = draft.prescription === undefined ? undefined : mealNameOf(survey, draft);
  const lines = [
    ...(meal === undefined ? [] : [words.forMeal(outsideRun(words.mealInSentence(meal)))]),
    ...plateLine(survey, draft, words),
    ...(survey.plate.companions.length === 0 ? [] : [words.eatenWith(companionsRun(survey.plate, words))]),
    ...(draft.prescription === undefined ? noneNamed(survey, words) : []),
  ];
  return [
    heading,
    ...(lines.length === 0 ? [] : [{ kind: 'text' as const, line: joined(lines) }]),
    { kind: 'foods', rows: foodsThat('fits', survey).map(one => foodRow(one, survey, draft, words)) },
  ];
}

/** A client's share of a meal is for the whole plate; a topic's rule stands in its own words. */
function plateLine({ yardstick }: HandoutSurvey, { prescription }: HandoutDraft, words: Words): readonly Line[] {
  const sodium = yardstick.tests.find(({ id }) => id === 'sodium');
  const asked = prescription === undefined || sodium === undefined ? undefined : boundOf(sodium)[0];
  return asked === undefined ? [] : [words.plateTakes(words.asked(asked))];
}

function mealNameOf({ category }: HandoutSurvey, draft: HandoutDraft): string {
  return category.meal ?? mealsOf(draft)[0]!.name;
}

/** What the verdict "fits" says of additives: none named, which proves nothing. */
export function noneNamed({ yardstick, switchedOn }: HandoutSurvey, words: Words): readonly Line[] {
  const kinds = testsJudged(yardstick, switchedOn).flatMap(({ measure }): AdditiveClass[] =>
    measure.kind === 'additive' ? [measure.class] : [],
  );
  return kinds.length === 0 ? [] : words.noneNamedHere(kinds);
}

function foodRow(one: HandoutFood, survey: HandoutSurvey, draft: HandoutDraft, words: Words): FoodRow {
  const { plate, dayYardstick } = survey;
  const { food, verdict, notTold = [] } = one;
  const { maker } = food.label.printed;
  const portion = `${portionWords(words, food, plate.portion)}, ${words.sodiumInIt(sodiumOf(words, food, plate.portion) ?? words.notOnLabel)}`;
  const day = dayYardstick && dayPortion(food, plate, byWhatIsTold(dayYardstick, notTold));
  return {
    foodId: food.id,
    name: food.name,
    ...(maker === undefined ? {} : { maker }),
    keepTo:
      dayYardstick === undefined
        ? [words.portionOnly(portion)]
        : [words.inAMeal(portion), ...(day === undefined ? [] : [words.inADay(portionWords(words, food, day))])],
    told: [
      ...marksOf(one, words),
      ...aimMarks(one, survey, draft, words),
      ...(keepsFromPotassium(one, draft) ? [words.potassiumNamed] : []),
      ...(verdict.closeCall ? [words.closeCall] : []),
      ...(verdict.estimated ? [words.estimated] : []),
    ],
  };
}

/** Foods whose label does not tell: to ask about, never among those that fit. */
export function askLines(survey: HandoutSurvey, words: Words): readonly Line[] {
  if (!isJudged(survey)) return [];
  return foodsThat("can't tell", survey).map(one => words.askWhy(foodRun(one.food.name), whyNotOf(one, survey)));
}

/** What fits, by aisle: in the order of the walk, aisles not named there by name, foods without an aisle last. */
export function shoppingBlocks(surveys: readonly HandoutSurvey[], { aisleOrder }: HandoutDraft, words: Words): readonly Block[] {
  const placed = surveys.flatMap(survey =>
    (isJudged(survey) ? foodsThat('fits', survey) : []).map(one => ({ one, aisle: aisleOf(one.food.id, survey) })),
  );
  const rank = (aisle: string): number => {
    if (aisle === '') return aisleOrder.length + 1;
    const at = aisleOrder.indexOf(aisle);
    return at < 0 ? aisleOrder.length : at;
  };
  return [...Map.groupBy(placed, ({ aisle }) => aisle)]
    .sort(([a], [b]) => rank(a) - rank(b) || alphabet.compare(a, b))
    .flatMap(([aisle, here]): Block[] => [
      { kind: 'heading', line: aisle === '' ? programLine(words.noAisle) : authorLine(aisle) },
      { kind: 'list', look: 'boxes', lines: here.map(({ one }) => itemLine(one, words)) },
    ]);
}

function itemLine(one: HandoutFood, words: Words): Line {
  const { maker } = one.food.label.printed;
  const name = foodRun(one.food.name);
  const marks = marksOf(one, words)
    .map(mark => `. ${mark}`)
    .join('');
  return maker === undefined ? line`${name}${marks}` : line`${name}, ${outsideRun(maker)}${marks}`;
}

/** A food may be called "constructor": only what the author wrote counts. */
function aisleOf(foodId: string, { category }: HandoutSurvey): string {
  return (Object.hasOwn(category.foodAisles, foodId) ? category.foodAisles[foodId] : undefined) ?? category.aisle ?? '';
}
