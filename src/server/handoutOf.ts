import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { handoutForClient } from '#app/handouts/handoutForClient.ts';
import { surveysForHandout } from '#app/handouts/surveysForHandout.ts';
import { type ClientRecord, foodsToAvoid } from '#core/client/record/record.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import { gradeOf, type HandoutGrade } from '#core/handout/gradeOf.ts';
import type { HandoutCategory, HandoutInput } from '#core/handout/handout.ts';
import { clientHandoutFromJson, handoutFromJson } from '#core/handout/handoutFromJson.ts';
import type { HandoutPage } from '#core/handout/handoutPage.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { isKnownKin, kinKeys } from '#core/yardstick/ingredientKin.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import type { Previews } from './previews.ts';
import { plateOf, type World, yardstickOf } from './workbench.ts';

/** A handout as far as it can be made: without `page` when what was typed is not a valid one yet. */
export interface BuiltHandout {
  readonly issues: readonly Issue[];
  readonly notices?: readonly string[];
  readonly input?: HandoutInput;
  readonly page?: HandoutPage;
}

/** One client's handout. @throws Fault handout-not-signed, handout-not-valid, plate-not-found */
export async function clientHandout(json: unknown, record: ClientRecord, useEstimates: boolean, world: World): Promise<BuiltHandout> {
  const { value: draft, issues } = clientHandoutFromJson(json);
  if (draft === undefined) return { issues };
  if (useEstimates) await wantMinerals(draft.categories, world);
  const plates = new Map(
    await Promise.all(draft.categories.map(async ({ plateId }) => [plateId, await plateOf(plateId, world.store)] as const)),
  );
  const { rules } = await clinicFigures(world.vault);
  return {
    ...made(handoutForClient({ record, draft, foods: await world.shelf.foods(), plates, useEstimates, rules }), issues),
    notices: [...stale(record), ...notKnown(record)],
  };
}

/** A handout on a topic. @throws Fault handout-not-valid, plate-not-found, yardstick-not-found */
export async function topicHandout(json: unknown, world: World): Promise<BuiltHandout> {
  const { value: draft, issues } = handoutFromJson(json);
  if (draft === undefined) return { issues };
  if (draft.topic === undefined) throw new Fault('handout-not-valid', 'A handout with a prescription belongs to its client, not here.');
  const topicYardstick = await yardstickOf(draft.topic.yardstickId, world.store);
  if (testsJudged(topicYardstick, draft.topic.switchedOn).some(({ useEstimates }) => useEstimates))
    await wantMinerals(draft.categories, world);
  const categories = await Promise.all(
    draft.categories.map(async category => ({
      category,
      plate: await plateOf(category.plateId, world.store),
      foods: (await world.shelf.foods(category.category)).map(({ food }) => food),
    })),
  );
  return made(surveysForHandout({ draft, categories, topicYardstick }), issues);
}

/** A prescription that is older than what is known of the client. */
function stale({ assessments, prescriptions, addedResults = [] }: ClientRecord): readonly string[] {
  const [newest] = assessments;
  const signedFor = assessments.find(({ id }) => id === prescriptions[0]?.assessmentId);
  const [latest] = addedResults;
  const signedOn = prescriptions[0]?.signed.at.slice(0, 10);
  if (newest === undefined) return [];
  if (signedFor === newest) {
    if (latest === undefined || signedOn === undefined || latest.on < signedOn) return [];
    return [`Results were added on ${latest.on}, and the prescription was signed on ${signedOn}: look whether its numbers still hold.`];
  }
  const [before, now] = [signedFor?.assessment.treatment.setting, newest.assessment.treatment.setting];
  return [
    `The prescription was signed for the assessment of ${signedFor?.assessment.on ?? 'an unknown day'}, and there is one of ${newest.assessment.on}: look whether its numbers still hold.`,
    ...(before === now ? [] : [`The treatment is another one since: this handout is for ${before?.replaceAll('-', ' ')}.`]),
  ];
}

/** Words of the client's that nothing can be told about. */
function notKnown(record: ClientRecord): readonly string[] {
  const words = foodsToAvoid(record).flatMap(kinKeys);
  const told = 'is no food that the program knows: no label can be told as free of it. Write it as an ingredient, as on a label.';
  return words.filter(key => !isKnownKin(key)).map(key => `“${key}”, which this client avoids, ${told}`);
}

async function wantMinerals(categories: readonly HandoutCategory[], { minerals, shelf }: World): Promise<void> {
  for (const { category } of categories) await minerals.want((await shelf.foods(category)).map(({ label }) => label));
}

function made(input: HandoutInput, issues: readonly Issue[]): BuiltHandout {
  const { value: page, issues: more } = buildHandout(input);
  return { issues: [...issues, ...more], input, page };
}

/** What the screen is told of a handout, its page kept to be looked at. */
export function handoutTold({ issues, notices = [], input, page }: BuiltHandout, previews: Previews, largePrint: boolean) {
  const grade = page === undefined ? undefined : gradeOf(page);
  return {
    ...(page === undefined ? {} : { previewId: previews.keep(handoutHtml(page, { largePrint })) }),
    notices: [...notices],
    issues: issues.map(({ code, place, found, expected }) => ({ code, place: { ...place }, found, expected })),
    ...(grade === undefined ? {} : { grade: gradeJson(grade) }),
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

function gradeJson({ all, program, author, hardest }: HandoutGrade) {
  const sentences = (list: HandoutGrade['hardest']['program']) =>
    list.map(({ why, longWords, ...one }) => ({ ...one, why: [...why], longWords: [...longWords] }));
  return { all, program, author, hardest: { program: sentences(hardest.program), author: sentences(hardest.author) } };
}

/** The page of a handout that is complete. @throws Fault handout-not-valid */
export function wholePage({ page }: BuiltHandout): HandoutPage {
  if (page === undefined) throw new Fault('handout-not-valid', 'Something is still to be written; the places are listed beside the form.');
  return page;
}
