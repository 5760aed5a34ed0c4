import { clinicFigures } from '#app/clients/clinicFigures.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import { gradeOf } from '#core/handout/gradeOf.ts';
import type { HandoutInput } from '#core/handout/handout.ts';
import { clientHandoutFromJson, handoutFromJson } from '#core/handout/handoutFromJson.ts';
import type { HandoutPage } from '#core/handout/handoutPage.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { findPlate } from '../findPlate.ts';
import { findYardstick } from '../findYardstick.ts';
import { foodsToJudge, wantsEstimates } from '../foodsToJudge.ts';
import type { Previews } from '../previews.ts';
import type { Workbench } from '../workbench.ts';
import { handoutCautions } from './handoutCautions.ts';
import { handoutForClient } from './handoutForClient.ts';
import { surveysForHandout } from './surveysForHandout.ts';

/** A handout as far as it can be made: without `page` when what was typed is not a valid one yet. */
export interface BuiltHandout {
  readonly issues: readonly Issue[];
  /** What to look at before the handout is given. */
  readonly cautions?: readonly string[];
  readonly input?: HandoutInput;
  readonly page?: HandoutPage;
}

/** One client's handout. @throws Fault handout-not-signed, handout-not-valid, plate-not-found */
export async function clientHandout(
  json: unknown,
  record: ClientRecord,
  useEstimates: boolean,
  workbench: Workbench,
): Promise<BuiltHandout> {
  const { value: draft, issues } = clientHandoutFromJson(json);
  if (draft === undefined) return { issues };
  for (const { category } of draft.categories) await foodsToJudge(workbench, category, useEstimates);
  const plates = new Map(
    await Promise.all(draft.categories.map(async ({ plateId }) => [plateId, await findPlate(plateId, workbench.store)] as const)),
  );
  const { rules } = await clinicFigures(workbench.vault);
  return {
    ...made(handoutForClient({ record, draft, foods: await workbench.shelf.foods(), plates, useEstimates, rules }), issues),
    cautions: handoutCautions(record),
  };
}

/** A handout on a topic. @throws Fault handout-not-valid, plate-not-found, yardstick-not-found */
export async function topicHandout(json: unknown, workbench: Workbench): Promise<BuiltHandout> {
  const { value: draft, issues } = handoutFromJson(json);
  if (draft === undefined) return { issues };
  if (draft.topic === undefined) throw new Fault('handout-not-valid', 'A handout with a prescription belongs to its client, not here.');
  const topicYardstick = await findYardstick(draft.topic.yardstickId, workbench.store);
  const useEstimates = wantsEstimates(topicYardstick, draft.topic.switchedOn);
  const categories = [];
  for (const category of draft.categories) {
    const { foods } = await foodsToJudge(workbench, category.category, useEstimates);
    const plate = await findPlate(category.plateId, workbench.store);
    categories.push({ category, plate, foods: foods.map(({ food }) => food) });
  }
  return made(surveysForHandout({ draft, categories, topicYardstick }), issues);
}

function made(input: HandoutInput, issues: readonly Issue[]): BuiltHandout {
  const { value: page, issues: more } = buildHandout(input);
  return { issues: [...issues, ...more], input, page };
}

/** What the screen is told of a handout, its page kept to be looked at. */
export function handoutTold({ issues, cautions = [], input, page }: BuiltHandout, previews: Previews, largePrint: boolean) {
  const grade = page === undefined ? undefined : gradeOf(page);
  return {
    ...(page === undefined ? {} : { previewId: previews.keep(handoutHtml(page, { largePrint })) }),
    cautions,
    issues,
    ...(grade === undefined ? {} : { grade }),
    foods: (input?.surveys ?? []).flatMap(({ category, foods }) =>
      foods.map(({ food, verdict }) => ({
        category: category.category,
        foodId: food.id,
        name: food.name,
        ...(food.label.printed.maker === undefined ? {} : { maker: food.label.printed.maker }),
        verdict: verdict.verdict,
      })),
    ),
  };
}

/** The page of a handout that is complete. @throws Fault handout-not-valid */
export function wholePage({ page }: BuiltHandout): HandoutPage {
  if (page === undefined) throw new Fault('handout-not-valid', 'Something is still to be written; the places are listed beside the form.');
  return page;
}
