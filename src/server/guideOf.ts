import { localDay } from '#app/clients/localDay.ts';
import { guideFromShelf, neverPublished, publishedState } from '#app/guides/guideFromShelf.ts';
import type { KeptGuide, PublishedLabel } from '#app/store.ts';
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
export async function builtGuide(json: unknown, published: readonly PublishedLabel[] | undefined, world: World): Promise<BuiltGuide> {
  const { value: draft, issues } = guideFromJson(json);
  if (draft === undefined) return { issues };
  const plate = await plateOf(draft.survey.plateId, world.store);
  const yardstick = await yardstickOf(draft.survey.yardstickId, world.store);
  if (testsJudged(yardstick, draft.survey.switchedOn).some(({ useEstimates }) => useEstimates))
    await world.minerals.want((await world.shelf.foods(draft.survey.category)).map(({ label }) => label));
  const foods = await world.shelf.foods(draft.survey.category);
  const state = published === undefined ? neverPublished : await publishedState(published, foods, world.shelf, world.store);
  const plates = await allPlates(world.store);
  const input = guideFromShelf({ draft, foods, plate, yardstick, plates, published: state, today: localDay(world.now()) });
  const { value: page, issues: more } = buildGuide(input);
  return { issues: [...issues, ...more], input, page };
}

/** @throws Fault guide-not-found */
export async function keptGuide(id: string, world: World): Promise<KeptGuide> {
  const kept = await world.store.getGuide(id);
  if (kept === undefined) throw new Fault('guide-not-found', 'The guide is not in the workspace.');
  return kept;
}

/** The page of a stored guide. @throws Fault guide-not-found, guide-not-valid, plate-not-found, yardstick-not-found */
export async function keptGuideBuilt(id: string, world: World): Promise<Required<BuiltGuide> & { readonly kept: KeptGuide }> {
  const kept = await keptGuide(id, world);
  const { issues, input, page } = await builtGuide(kept.value, kept.published, world);
  if (input === undefined || page === undefined)
    throw new Fault(
      'guide-not-valid',
      issues.map(({ place, found, expected }) => `${place.heading ?? 'the guide'}: found ${found}, expected ${expected}`).join('; '),
    );
  return { issues, input, page, kept };
}
