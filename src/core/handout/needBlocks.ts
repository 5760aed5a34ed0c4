import { isNeed } from '#core/client/aims/limitKind.ts';
import { amountOfNeed, type Need, needs } from '#core/client/aims/needs.ts';
import { leastIn } from '#core/yardstick/aimOrder.ts';
import { aimedFood, keepsFromPotassium } from './aimed.ts';
import { isJudged } from './foodSections.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';
import type { Block } from './handoutPage.ts';
import { programLine } from './line.ts';
import { marksOf } from './marks.ts';
import { askedOf } from './numbers.ts';
import { portionWords } from './portions.ts';
import { figure } from './words/numbers.ts';
import type { Words } from './words/words.ts';

/** So many foods to add for each need (own decision): a few are bought, many are skipped. */
const mostToAdd = 5;

/** What to add where the signed target says "at least": the foods that fit with the most of it, counted at the least that they may have. */
export function needBlocks(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Block[] {
  return needs.flatMap(need => {
    const target = draft.prescription?.targets.find(({ item }) => item === need);
    const day = target !== undefined && isNeed(target) ? askedOf(target, words) : undefined;
    if (day === undefined) return [];
    const rows = withTheMost(need, surveys, draft).map(({ one, survey, least }) => ({
      foodId: one.food.id,
      name: one.food.name,
      keepTo: [
        portionWords(words, one.food, survey.plate.portion),
        words.atLeastIn(need, `${figure(least, 0)} ${words.units[units[need]]}`),
      ],
      told: marksOf(one, words),
    }));
    return [
      { kind: 'heading', line: programLine(words.moreOf[need]) },
      { kind: 'text', line: words.addFoods(need, day) },
      ...(rows.length === 0 ? [{ kind: 'text' as const, line: words.noneToAdd }] : [{ kind: 'foods' as const, rows }]),
    ] satisfies readonly Block[];
  });
}

const units = { energy: 'kcal', protein: 'g', potassium: 'mg', phosphorus: 'mg', fluid: 'mL' } as const satisfies Readonly<
  Record<Need, string>
>;

interface ToAdd {
  readonly one: HandoutFood;
  readonly survey: HandoutSurvey;
  readonly least: number;
}

/** Where nothing bounds a category, nothing forbids its foods. A food whose label does not tell the amount is not among them: nobody knows that it adds. */
function withTheMost(need: Need, surveys: readonly HandoutSurvey[], draft: HandoutDraft): readonly ToAdd[] {
  return surveys
    .flatMap(survey =>
      survey.foods
        .filter(one => (one.verdict.verdict === 'fits' || !isJudged(survey)) && !keepsFromPotassium(one, draft))
        .flatMap(one => {
          const least = Math.floor((leastIn(amountOfNeed[need], aimedFood(one, survey)) ?? 0) + 1e-9);
          return least > 0 ? [{ one, survey, least }] : [];
        }),
    )
    .sort((a, b) => b.least - a.least || (a.one.food.id < b.one.food.id ? -1 : 1))
    .slice(0, mostToAdd);
}
