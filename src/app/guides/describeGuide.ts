import { Fault } from '#core/errors.ts';
import { isSameJson } from '#core/json/isSameJson.ts';
import { isObject, type JsonObject } from '#core/json/presentForm.ts';
import type { GuideFile, KeptGuide } from '../documents.ts';
import type { Workbench } from '../workbench.ts';
import { builtGuide } from './builtGuide.ts';

/** A kept guide as its screen opens it. */
export function describeGuide({ value, version, isDemo, published }: KeptGuide) {
  return {
    guide: value,
    version,
    isDemo,
    isPublished: published !== undefined,
    /** Whether it was changed since it was published: readers have the published one. */
    isChanged: published !== undefined && !isSameJson(value, published.guide),
    ...(published === undefined ? {} : { published }),
  };
}

/** One line of the list. A guide whose plate or yardstick is gone is listed too: its screen says what to do. */
export async function describeGuideShort(kept: KeptGuide, workbench: Workbench) {
  const { value, version, isDemo, published } = kept;
  const built = await builtGuide(value, published, workbench).catch(error => {
    if (error instanceof Fault) return { issues: [error], page: undefined };
    throw error;
  });
  const publishedOn = typed(value, 'publishedOn');
  return {
    id: value.id,
    version,
    isDemo,
    title: typed(value, 'title') ?? 'A guide without a title',
    category: (isObject(value.survey) ? typed(value.survey, 'category') : undefined) ?? '',
    ...(publishedOn === undefined ? {} : { publishedOn }),
    isPublished: published !== undefined,
    ...(built.page === undefined ? {} : { counts: built.page.counts }),
    takenOff: built.page?.takenOff.length ?? 0,
    toMend: built.issues.length,
  };
}

/** What was published keeps its own name, which a copy of the guide does not share. */
export function namedGuide(json: JsonObject, id: string): GuideFile {
  return { ...json, id: typed(json, 'id') ?? id };
}

function typed(json: JsonObject, key: string): string | undefined {
  const value = json[key];
  return typeof value === 'string' && value !== '' ? value : undefined;
}
