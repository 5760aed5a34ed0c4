import { z } from 'zod';
import { type DocumentFile, isDocument, type PublishedGuide } from '#app/documents.ts';
import type { NewPhoto } from '#app/store.ts';
import { type SavedSurvey, savedSurveyFromJson } from '#core/yardstick/savedSurvey.ts';
import { readJson } from './readJson.ts';

/** What stands in columns with a form of their own, as far as storage has to know it: the rest is read by whoever owns it. Undefined when it is damaged. */

export function readDocument(text: string): DocumentFile | undefined {
  return readJson(text, json => (isDocument(json) ? json : undefined));
}

const published = z.object({
  guide: z.custom<DocumentFile>(isDocument),
  labels: z.array(z.object({ foodId: z.string(), labelId: z.string() })),
});
export function readPublished(text: string): PublishedGuide | undefined {
  return readJson(text, json => published.safeParse(json).data);
}

export function readSurvey(text: string): SavedSurvey | undefined {
  return readJson(text, json => savedSurveyFromJson(json).value);
}

const measures = z.record(z.string(), z.number());
export function readMeasures(text: string): Readonly<Record<string, number>> | undefined {
  return readJson(text, json => measures.safeParse(json).data);
}

/** An estimate belongs to whoever made it: any JSON will do. */
export function readAny(text: string): { readonly json: unknown } | undefined {
  return readJson(text, json => ({ json }));
}

const mime = z.enum(['image/jpeg', 'image/png', 'image/webp']);
/** What a browser is told of a photo's bytes is one of our kinds, whatever stands there. */
export function readMime(text: string): NewPhoto['mime'] | undefined {
  return mime.safeParse(text).data;
}
