import type { Issue, Reading } from '#core/errors.ts';
import { askLines, categoryHeading, foodBlocks, isJudged, noneNamed, shoppingBlocks } from './foodSections.ts';
import { callBlocks, fridgeSection } from './fridge.ts';
import type { HandoutDraft, HandoutInput, HandoutPart, HandoutSurvey } from './handout.ts';
import type { Block, HandoutPage, Line, Section, SectionId } from './handoutPage.ts';
import { labelSteps } from './labelSteps.ts';
import { authorLine, joined, outsideRun, programLine } from './line.ts';
import { needBlocks } from './needBlocks.ts';
import { additiveLines, dayLines, hasFluidLimit, hasSodium, numbersTable } from './numbers.ts';
import { swapBlocks } from './swaps.ts';
import { refuseMineralTopics, topicRules } from './topicRule.ts';
import { wordsIn } from './words/inLanguage.ts';
import type { Words } from './words/words.ts';

export type HandoutIssueCode = 'handout-food-not-found' | 'handout-category-empty';

/**
 * A handout as its reader will see it. Only a food that fits is listed to eat or to buy; one whose label does not tell stands under
 * "Ask us first"; a potassium or phosphorus number comes from a signed prescription alone.
 *
 * @throws Fault handout-not-valid for a topic whose yardstick bounds potassium or phosphorus.
 */
export function buildHandout(input: HandoutInput): Reading<HandoutPage, HandoutIssueCode> {
  const { draft } = input;
  const words = wordsIn[draft.language];
  if (draft.prescription === undefined) refuseMineralTopics(input.surveys);
  const surveys = input.surveys.map(survey => ({
    ...survey,
    foods: survey.foods.filter(({ food }) => !survey.category.leftOut.includes(food.id)),
  }));
  const has = (part: HandoutPart): boolean => draft.parts.includes(part);
  const part = (id: SectionId, ...blocks: readonly Block[]): readonly Section[] =>
    blocks.length === 0 ? [] : [{ id, title: titleOf(id, draft, words), blocks }];
  const ask = surveys.flatMap(one => askBlocks(one, words));
  const page: HandoutPage = {
    id: draft.id,
    language: draft.language,
    title: draft.title === undefined ? programLine(words.titleFor[draft.setting]) : authorLine(draft.title),
    about: about(draft, words),
    writtenOn: draft.writtenOn,
    sections: [
      ...(has('fridge') ? [fridgeSection(draft, surveys, words)] : []),
      ...part('notes', ...draft.notes.map((note): Block => ({ kind: 'text', line: authorLine(note) }))),
      ...(has('numbers') ? part('numbers', ...numberBlocks(draft, surveys, words)) : []),
      ...(has('foods') ? part('foods', ...foodsPart(surveys, draft, words)) : []),
      ...(has('foods') && ask.length > 0 ? part('ask', ...texts(words.askIntro), ...ask) : []),
      ...(has('labels') ? part('labels', { kind: 'list', look: 'steps', lines: labelSteps(draft, surveys, words) }) : []),
      ...(has('swaps') ? part('swaps', ...swapsPart(surveys, draft, words)) : []),
      ...(has('shopping') ? part('shopping', ...shoppingPart(surveys, draft, words)) : []),
      ...(has('fridge') ? [] : part('call', ...callBlocks(draft, words, false))),
      ...part('cautions', { kind: 'list', look: 'points', lines: cautions(draft, surveys, words) }),
    ],
  };
  return { value: page, issues: [...foodsNotFound(input), ...emptyCategories(input)] };
}

function titleOf(id: SectionId, { prescription }: HandoutDraft, words: Words): string {
  return id === 'numbers' && prescription === undefined ? words.topicNumbersTitle : words.sectionTitle[id];
}

function texts(lines: readonly Line[]): readonly Block[] {
  return lines.map(line => ({ kind: 'text', line }));
}

function about({ reader, author, setting, writtenOn }: HandoutDraft, words: Words): readonly Line[] {
  const name = author.credentials === undefined ? author.name : `${author.name}, ${author.credentials}`;
  return [
    ...(reader === undefined ? [] : [words.forReader(outsideRun(reader))]),
    words.settingLine(setting),
    words.byAuthor(outsideRun(name)),
    words.writtenOn(writtenOn),
  ];
}

function numberBlocks(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Block[] {
  const { prescription } = draft;
  if (prescription === undefined) return [{ kind: 'list', look: 'points', lines: [...topicRules(surveys, words), words.onlyTheTeam] }];
  const { by, credentials, on } = prescription.signed;
  const signer = outsideRun(credentials === undefined ? by : `${by}, ${credentials}`);
  const table = numbersTable(draft, words);
  const days = [...dayLines(draft, words), ...additiveLines(draft, words)];
  return [
    ...texts(words.ownNumbers(on, signer)),
    ...(table.length === 0 && days.length === 0 ? texts([words.noNumbers]) : []),
    ...table,
    ...(table.length === 0 ? [] : texts([words.sharesOfDay])),
    ...(hasSodium(draft) ? [] : texts([words.noSodiumNumber])),
    ...(days.length === 0 ? [] : [{ kind: 'list' as const, look: 'points' as const, lines: days }]),
    ...(hasFluidLimit(prescription) ? texts([words.fluidCounts]) : []),
    ...texts([words.onlyTheTeam]),
  ];
}

function foodsPart(surveys: readonly HandoutSurvey[], draft: HandoutDraft, words: Words): readonly Block[] {
  if (surveys.length === 0) return [];
  const [judged] = surveys.filter(isJudged);
  const ofClient = draft.prescription === undefined || judged === undefined ? [] : [words.dayIsTheMost, ...noneNamed(judged, words)];
  const { aims = [] } = draft;
  return [
    ...texts([joined([...words.foodsIntro, ...ofClient])]),
    ...(aims.length === 0 ? [] : [{ kind: 'list' as const, look: 'points' as const, lines: aims.map(words.aim) }]),
    ...needBlocks(draft, surveys, words),
    ...surveys.flatMap(survey => foodBlocks(survey, draft, words)),
  ];
}

function askBlocks(survey: HandoutSurvey, words: Words): readonly Block[] {
  const lines = askLines(survey, words);
  return lines.length === 0 ? [] : [categoryHeading(survey), { kind: 'list', look: 'points', lines }];
}

function swapsPart(surveys: readonly HandoutSurvey[], draft: HandoutDraft, words: Words): readonly Block[] {
  const isOff = ({ verdict: { verdict } }: HandoutSurvey['foods'][number]): boolean => verdict === 'over' || verdict === 'nearly';
  const judged = surveys.filter(survey => survey.foods.some(isOff));
  if (judged.length === 0) return [];
  return [...texts([words.swapsIntro]), ...judged.flatMap(survey => [categoryHeading(survey), ...swapBlocks(survey, draft, words)])];
}

function shoppingPart(surveys: readonly HandoutSurvey[], draft: HandoutDraft, words: Words): readonly Block[] {
  const aisles = shoppingBlocks(surveys, draft, words);
  if (surveys.length === 0) return [];
  const none = surveys.some(isJudged) ? words.noneFits : words.nothingBounds;
  return aisles.length === 0 ? texts([none]) : [...texts([words.shoppingIntro]), ...aisles];
}

function cautions(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Line[] {
  const days = surveys.flatMap(({ foods }) => foods.flatMap(({ food }) => food.label.printed.readOn ?? [])).sort();
  return [
    ...words.cautions,
    ...(draft.prescription === undefined ? [] : [words.clientCaution]),
    ...words.settingCautions[draft.setting],
    words.callDietitian,
    ...(days.length === 0 ? [] : [words.labelsRead(days[0]!, days.at(-1)!)]),
    ...(draft.parts.includes('labels') ? [] : [words.steps.again]),
  ];
}

function foodsNotFound({ surveys }: HandoutInput): Issue<HandoutIssueCode>[] {
  return surveys.flatMap(({ category, foods }, at) => {
    const known = new Set(foods.map(({ food }) => food.id));
    const named = [
      ...Object.keys(category.foodAisles).map((id): [string, string] => [`categories[${at}].foodAisles.${id}`, id]),
      ...category.leftOut.map((id, index): [string, string] => [`categories[${at}].leftOut[${index}]`, id]),
    ];
    return named
      .filter(([, id]) => !known.has(id))
      .map(([heading, found]) => ({
        code: 'handout-food-not-found' as const,
        place: { heading },
        found,
        expected: 'the id of a food of this category; what is said of it is left out',
      }));
  });
}

function emptyCategories({ surveys }: HandoutInput): Issue<HandoutIssueCode>[] {
  return surveys.flatMap(({ category, foods }, at) =>
    foods.length > 0
      ? []
      : [
          {
            code: 'handout-category-empty' as const,
            place: { heading: `categories[${at}].category` },
            found: category.category,
            expected: 'a category that has labels; the page says that no food of it has been checked',
          },
        ],
  );
}
