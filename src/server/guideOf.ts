import { localDay } from '#app/clients/localDay.ts';
import { guideFromShelf, neverPublished, publishedState } from '#app/guides/guideFromShelf.ts';
import type { GuideFile, KeptGuide, PublishedGuide } from '#app/store.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { buildGuide } from '#core/guide/buildGuide.ts';
import type { GuideInput } from '#core/guide/guide.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import type { GuidePage } from '#core/guide/guidePage.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { allPlates, plateOf, type World, yardstickOf } from './workbench.ts';

/** A guide as far as it can be built: without `input` when what was typed is not a valid guide yet, or when its category is empty. */
export interface BuiltGuide {
  readonly issues: readonly Issue[];
  readonly input?: GuideInput;
  readonly page?: GuidePage;
}

/**
 * Builds a guide from its JSON and the shelf, with estimates where its yardstick takes them and they are made.
 *
 * @throws Fault plate-not-found, yardstick-not-found
 */
export async function builtGuide(json: unknown, published: PublishedGuide | undefined, world: World): Promise<BuiltGuide> {
  const { value: draft, issues } = guideFromJson(json);
  if (draft === undefined) return { issues };
  const plate = await plateOf(draft.survey.plateId, world.store);
  const yardstick = await yardstickOf(draft.survey.yardstickId, world.store);
  if (testsJudged(yardstick, draft.survey.switchedOn).some(({ useEstimates }) => useEstimates))
    await world.minerals.want((await world.shelf.foods(draft.survey.category)).map(({ label }) => label));
  const foods = await world.shelf.foods(draft.survey.category);
  const state = published === undefined ? neverPublished : await publishedState(published, draft, foods, world.shelf, world.store);
  const plates = await allPlates(world.store);
  const input = guideFromShelf({ draft, foods, plate, yardstick, plates, published: state, today: localDay(world.now()) });
  const { value: page, issues: more } = buildGuide(input);
  return { issues: [...issues, ...more], input, page };
}

/** @throws Fault guide-not-found */
export async function keptGuide(id: string, world: World): Promise<KeptGuide> {
  const kept = await world.store.guides.get(id);
  if (kept === undefined) throw new Fault('guide-not-found', 'The guide is not in the workspace.');
  return kept;
}

/** A stored guide as it is written now. @throws Fault guide-not-found, guide-not-valid, plate-not-found, yardstick-not-found */
export async function keptGuideBuilt(id: string, world: World): Promise<Required<BuiltGuide> & { readonly kept: KeptGuide }> {
  const kept = await keptGuide(id, world);
  return { ...(await whole(kept.value, kept, world)), kept };
}

/** A guide as it was published, on the labels of today: what readers are given until it is published again. */
export async function publishedBuilt(kept: KeptGuide, world: World): Promise<Required<BuiltGuide>> {
  return whole(kept.published?.guide ?? kept.value, kept, world);
}

/** Faults name the guide: there may be many. */
async function whole(json: GuideFile, { published }: KeptGuide, world: World): Promise<Required<BuiltGuide>> {
  const name = typeof json.title === 'string' && json.title !== '' ? json.title : json.id;
  const { issues, input, page } = await builtGuide(json, published, world).catch(error => {
    throw error instanceof Fault ? new Fault(error.code, `The guide "${name}": ${error.message}`) : error;
  });
  if (input === undefined || page === undefined) {
    const places = issues.map(({ place, found, expected }) => `${place.heading ?? 'the guide'}: found ${found}, expected ${expected}`);
    throw new Fault('guide-not-valid', `The guide "${name}": ${places.join('; ')}`);
  }
  return { issues, input, page };
}
