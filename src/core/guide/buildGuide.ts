import type { Issue, Reading } from '#core/errors.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { judgePlate, testsJudged } from '#core/yardstick/judgePlate.ts';
import { settings } from '#core/yardstick/yardstick.ts';
import { noneNamedCaution, unprintedCaution } from '#core/yardstick/yardsticks/sources.ts';
import { smallestMargin } from './againstBound.ts';
import { arranged, type Placed } from './arrange.ts';
import type { GuideDraft, GuideInput, GuideSurveyFood } from './guide.ts';
import type { GuideEntry, GuidePage } from './guidePage.ts';
import { guideRule } from './guideRule.ts';
import { countedReasons, leftOutReason } from './leftOut.ts';
import { settingWords } from './settingWords.ts';
import { varietyOf } from './variety.ts';

const generalCaution =
  'This guide is general information. It does not replace the advice of your kidney team; ask them before you change what you eat. Makers change recipes: read the label.';

/**
 * A guide as readers will see it: what fits, arranged and folded, what nearly does with its ways in, and how many foods were left out
 * and why. What the author says of a food that the survey does not have is left out and reported.
 */
export function buildGuide(input: GuideInput): Reading<GuidePage, 'guide-food-not-found'> {
  const { draft, survey, today } = input;
  const tests = testsJudged(survey.yardstick, draft.survey.switchedOn);
  const byAuthor = new Map(draft.leftOut.map(({ foodId, reason }) => [foodId, reason]));
  const kept = survey.foods.filter(({ food }) => !byAuthor.has(food.id));
  const placed = (word: 'fits' | 'nearly'): Placed[] =>
    kept
      .filter(({ verdict }) => verdict.verdict === word)
      .map(surveyed => ({ variety: varietyOf(surveyed, input), margin: smallestMargin(tests, surveyed.verdict) }));
  const sections = arranged(placed('fits'), draft);
  const nearly = arranged(placed('nearly'), draft).flatMap(({ entries }) => entries);
  const others = kept.filter(({ verdict: { verdict } }) => verdict === 'over' || verdict === "can't tell");
  const shown = [...sections.flatMap(({ entries }) => entries), ...nearly].flatMap(({ varieties }) => varieties);
  const days = shown.flatMap(({ readOn }) => readOn ?? []).sort();
  const fits = varieties(sections.flatMap(({ entries }) => entries));
  const example = exampleOf(kept, fits, varieties(nearly));
  const page: GuidePage = {
    id: draft.id,
    language: draft.language,
    title: draft.title,
    purpose: draft.purpose,
    whoItIsFor: draft.whoItIsFor,
    category: draft.survey.category,
    publishedOn: draft.publishedOn,
    builtOn: today,
    author: draft.author,
    disclosures: draft.disclosures,
    rule: guideRule(survey, draft.survey.switchedOn, example),
    settingsNotes: settings.flatMap(setting => {
      const text = draft.settingsNotes[setting];
      return text === undefined ? [] : [{ title: settingWords[setting], text }];
    }),
    sections,
    nearly,
    leftOut: countedReasons([
      ...others.map(({ verdict }) => leftOutReason(tests, verdict)),
      ...survey.foods.flatMap(({ food }) => byAuthor.get(food.id) ?? []),
    ]),
    takenOff: takenOff(others, input),
    counts: {
      read: survey.foods.length,
      fits: fits.length,
      nearly: varieties(nearly).length,
      leftOut: survey.foods.length - shown.length,
      marked: shown.filter(({ marks }) => marks.length > 0).length,
    },
    ...(days.length === 0 ? {} : { labelsRead: { from: days[0]!, to: days.at(-1)! } }),
    cautions: [...new Set([...draft.cautions, ...survey.yardstick.cautions, noneNamedCaution, unprintedCaution, generalCaution])],
    corrections: [...draft.corrections].sort((a, b) => (a.on === b.on ? 0 : a.on < b.on ? 1 : -1)),
  };
  return { value: page, issues: foodsNotFound(draft, survey.foods) };
}

function varieties(entries: readonly GuideEntry[]): readonly string[] {
  return entries.flatMap(entry => entry.varieties.map(({ foodId }) => foodId));
}

/** The first food of the page that fits and is no close call, so that the example does not hang on rounding; else the first at all. */
function exampleOf(foods: readonly GuideSurveyFood[], ...pages: readonly (readonly string[])[]): GuideSurveyFood | undefined {
  const byId = new Map(foods.map(surveyed => [surveyed.food.id, surveyed]));
  const inOrder = pages.flat().map(id => byId.get(id)!);
  return inOrder.find(({ verdict }) => verdict.verdict === 'fits' && !verdict.closeCall) ?? inOrder[0];
}

/** Readers may still have the food in their list: it is named where its newest label no longer fits, or where it has none any more. */
function takenOff(others: readonly GuideSurveyFood[], { draft, survey, asPublished, gone = [] }: GuideInput): readonly string[] {
  const { switchedOn, setting } = draft.survey;
  const { plate, yardstick } = survey;
  const fitted = (food: PlateFood): boolean =>
    judgePlate({ food, plate, yardstick, switchedOn, ...(setting === undefined ? {} : { setting }) }).verdict === 'fits';
  const before = others.flatMap(({ food }) => {
    const label = asPublished?.get(food.id);
    return label !== undefined && fitted({ ...food, label }) ? [food] : [];
  });
  return [...before, ...gone.filter(fitted)].map(({ name, label }) => {
    const { maker } = label.printed;
    return maker === undefined ? name : `${name}, ${maker}`;
  });
}

function foodsNotFound(draft: GuideDraft, foods: readonly GuideSurveyFood[]): Issue<'guide-food-not-found'>[] {
  const known = new Set(foods.map(({ food }) => food.id));
  const named: [heading: string, id: string][] = [
    ...Object.keys(draft.portionNotes).map((id): [string, string] => [`portionNotes.${id}`, id]),
    ...Object.keys(draft.whereToBuy).map((id): [string, string] => [`whereToBuy.${id}`, id]),
    ...Object.keys(draft.photos).map((id): [string, string] => [`photos.${id}`, id]),
    ...draft.leftOut.map(({ foodId }, index): [string, string] => [`leftOut[${index}]`, foodId]),
    ...draft.disclosures.flatMap(({ foods: ids = [] }, index) => ids.map((id): [string, string] => [`disclosures[${index}]`, id])),
  ];
  return named
    .filter(([, id]) => !known.has(id))
    .map(([heading, id]) => ({
      code: 'guide-food-not-found',
      place: { heading },
      found: id,
      expected: 'the id of a food of the survey; its label may have been removed. What is said of it is left out',
    }));
}
