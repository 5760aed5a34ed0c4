import { localDay } from '#app/clients/localDay.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { buildGuide } from '#core/guide/buildGuide.ts';
import type { GuideInput } from '#core/guide/guide.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import type { GuidePage } from '#core/guide/guidePage.ts';
import type { GuideFile, KeptGuide, PublishedGuide } from '../documents.ts';
import { allPlates, findPlate } from '../findPlate.ts';
import { findYardstick } from '../findYardstick.ts';
import { foodsToJudge, wantsEstimates } from '../foodsToJudge.ts';
import { placesText } from '../wholeOr.ts';
import type { Workbench } from '../workbench.ts';
import { guideFromShelf, neverPublished, publishedState } from './guideFromShelf.ts';

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
export async function builtGuide(json: unknown, published: PublishedGuide | undefined, workbench: Workbench): Promise<BuiltGuide> {
  const { value: draft, issues } = guideFromJson(json);
  if (draft === undefined) return { issues };
  const { plateId, yardstickId, category, switchedOn } = draft.survey;
  const plate = await findPlate(plateId, workbench.store);
  const yardstick = await findYardstick(yardstickId, workbench.store);
  const { foods } = await foodsToJudge(workbench, category, wantsEstimates(yardstick, switchedOn));
  const state = published === undefined ? neverPublished : await publishedState(published, draft, foods, workbench.shelf, workbench.store);
  const plates = await allPlates(workbench.store);
  const input = guideFromShelf({ draft, foods, plate, yardstick, plates, published: state, today: localDay(workbench.now()) });
  const { value: page, issues: more } = buildGuide(input);
  return { issues: [...issues, ...more], input, page };
}

/** @throws Fault guide-not-found */
export async function keptGuide(id: string, workbench: Workbench): Promise<KeptGuide> {
  const kept = await workbench.store.guides.get(id);
  if (kept === undefined) throw new Fault('guide-not-found', 'The guide is not in the workspace.');
  return kept;
}

/** A stored guide as it is written now. @throws Fault guide-not-found, guide-not-valid, plate-not-found, yardstick-not-found */
export async function keptGuideBuilt(id: string, workbench: Workbench): Promise<Required<BuiltGuide> & { readonly kept: KeptGuide }> {
  const kept = await keptGuide(id, workbench);
  return { ...(await whole(kept.value, kept, workbench)), kept };
}

/** A guide as it was published, on the labels of today: what readers are given until it is published again. */
export async function publishedBuilt(kept: KeptGuide, workbench: Workbench): Promise<Required<BuiltGuide>> {
  return whole(kept.published?.guide ?? kept.value, kept, workbench);
}

/** Faults name the guide: there may be many. */
async function whole(json: GuideFile, { published }: KeptGuide, workbench: Workbench): Promise<Required<BuiltGuide>> {
  const name = typeof json.title === 'string' && json.title !== '' ? json.title : json.id;
  const { issues, input, page } = await builtGuide(json, published, workbench).catch(error => {
    throw error instanceof Fault ? new Fault(error.code, `The guide "${name}": ${error.message}`) : error;
  });
  if (input === undefined || page === undefined) {
    throw new Fault('guide-not-valid', `The guide "${name}": ${placesText(issues, 'the guide')}`);
  }
  return { issues, input, page };
}
