import { z } from 'zod';
import type { Issue, Reading } from '#core/errors.ts';
import { checkJson, type JsonIssueCode } from '#core/json/checkJson.ts';
import type { TypedOf } from '#core/json/jsonOf.ts';
import type { FormStep } from '#core/json/presentForm.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import { surveyControls } from '#core/yardstick/savedSurvey.ts';
import { settings } from '#core/yardstick/yardstick.ts';
import { type GuideDraft, largestPhoto } from './guide.ts';
import { safeUrl } from './html/escape.ts';

const words = z.string().regex(/\S/, 'text');
const day = z.string().refine(isDay, 'a day as yyyy-mm-dd');
const fileName = z
  .string()
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'small letters, digits and single hyphens')
  .max(80, 'at most 80 characters')
  .refine(id => !/^(?:con|prn|aux|nul|com\d|lpt\d)$/.test(id), 'a name that every system can give to a file');

const place = z
  .object({
    shop: words,
    aisle: words.exactOptional(),
    url: z.string().exactOptional(),
    price: words.exactOptional(),
    priceOn: day.exactOptional(),
  })
  .refine(({ price, priceOn }) => price !== undefined || priceOn === undefined, 'priceOn together with price');

const photo = z.object({
  dataUrl: z
    .string()
    .max(largestPhoto, 'a picture of at most 100 kB')
    .regex(/^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+={0,2}$/, 'a JPEG, PNG or WebP picture as data:image/…;base64,…'),
  alt: words,
});

export const guideSchema = z.object({
  id: fileName,
  language: z.literal('en', { error: '"en": the only language so far' }).default('en'),
  title: words,
  purpose: words,
  whoItIsFor: words,
  publishedOn: day,
  survey: surveyControls,
  settingsNotes: z.partialRecord(z.enum(settings), words).default({}),
  arrangement: z.enum(['shelf', 'maker', 'margin']).default('shelf'),
  aisles: z.array(words).default([]),
  portionNotes: z.record(z.string(), words).default({}),
  whereToBuy: z.record(z.string(), z.array(place)).default({}),
  photos: z.record(z.string(), photo).default({}),
  leftOut: z.array(z.object({ foodId: words, reason: words })).default([]),
  author: z.object({ name: words, credentials: words.exactOptional() }),
  disclosures: z
    .array(
      z.object({
        kind: z.enum(['affiliate', 'free-sample', 'sponsorship', 'none']),
        text: words,
        shops: z.array(words).exactOptional(),
        foods: z.array(words).exactOptional(),
      }),
    )
    .default([]),
  cautions: z.array(words).default([]),
  corrections: z.array(z.object({ on: day, text: words })).default([]),
  recheckAfterDays: z.number().int().positive('a whole number of days, more than 0').default(180),
});

/** A guide as it is while its author writes it. */
export type GuideTyped = TypedOf<typeof guideSchema>;

/** No earlier form has been written yet. */
const steps: readonly FormStep[] = [];

export type GuideIssueCode = JsonIssueCode | 'link-not-http' | 'disclosure-missing';

/**
 * Reads a guide as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. A link that is
 * not http or https is reported and taken out; so are links that nobody has said anything about being paid for (16 CFR 255.5), which stay.
 */
export function guideFromJson(value: unknown): Reading<GuideDraft | undefined, GuideIssueCode> {
  const checked = checkJson(guideSchema, value, steps);
  if (!checked.ok) return { value: undefined, issues: checked.issues };
  const issues: Issue<GuideIssueCode>[] = [...checked.issues];
  const whereToBuy = Object.fromEntries(
    Object.entries(checked.value.whereToBuy).map(([foodId, places]) => [
      foodId,
      places.map(({ url, ...rest }, index) => {
        if (url === undefined) return rest;
        const safe = safeUrl(url);
        if (safe !== undefined) return { ...rest, url: safe };
        issues.push({
          code: 'link-not-http',
          place: { heading: `whereToBuy.${foodId}[${index}].url` },
          found: url.slice(0, 60),
          expected: 'an address that begins with http:// or https:// and has no user name in it; the link is left out',
        });
        return rest;
      }),
    ]),
  );
  const hasLinks = Object.values(whereToBuy).some(places => places.some(one => 'url' in one));
  if (hasLinks && checked.value.disclosures.length === 0)
    issues.push({
      code: 'disclosure-missing',
      place: { heading: 'disclosures' },
      found: 'links to shops and no disclosure',
      expected: 'what the author gets for them, or { "kind": "none", "text": … } (16 CFR 255.5)',
    });
  return { value: { ...checked.value, whereToBuy }, issues };
}
