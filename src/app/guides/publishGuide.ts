import { localDay } from '#app/clients/localDay.ts';
import type { GuideFile, KeptGuide } from '../documents.ts';
import type { Workbench } from '../workbench.ts';
import { keptGuideBuilt } from './builtGuide.ts';
import { labelsToPublish } from './guideFromShelf.ts';

/**
 * Puts a guide on record as readers are given it from today: its words, and the label that stands for every food of its survey. One that
 * is not finished cannot be published.
 *
 * @throws Fault guide-not-found, guide-not-valid, changed-meanwhile
 */
export async function publishGuide(id: string, seenVersion: number, workbench: Workbench): Promise<KeptGuide> {
  const { kept, input } = await keptGuideBuilt(id, workbench);
  const guide: GuideFile = { ...kept.value, publishedOn: localDay(workbench.now()) };
  const labels = labelsToPublish(await workbench.shelf.foods(input.draft.survey.category));
  return workbench.store.guides.put(guide, seenVersion, { published: { guide, labels } });
}
