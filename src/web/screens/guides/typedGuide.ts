import type { GuideTyped } from '#core/guide/guideFromJson.ts';
import { isObject } from '#core/json/presentForm.ts';

/** A guide as its form holds it: every field is there, lists that are typed one a line are texts. */
export interface TypedGuide {
  readonly title: string;
  readonly purpose: string;
  readonly whoItIsFor: string;
  readonly publishedOn: string;
  readonly authorName: string;
  readonly credentials: string;
  readonly survey: TypedSurvey;
  readonly settingsNotes: Readonly<Record<string, string>>;
  readonly arrangement: string;
  readonly aisles: string;
  readonly portionNotes: Readonly<Record<string, string>>;
  readonly whereToBuy: Readonly<Record<string, readonly TypedPlace[]>>;
  readonly photos: Readonly<Record<string, { readonly dataUrl: string; readonly alt: string }>>;
  /** The reason by food id. */
  readonly leftOut: Readonly<Record<string, string>>;
  readonly disclosures: readonly TypedDisclosure[];
  readonly cautions: string;
  readonly corrections: readonly { readonly on: string; readonly text: string }[];
  readonly recheckAfterDays: string;
  /** What this form does not know: it goes back as it came. */
  readonly rest: GuideTyped;
}

export interface TypedSurvey {
  readonly category: string;
  readonly plateId: string;
  readonly yardstickId: string;
  readonly setting: string;
  readonly servings: string;
  readonly switchedOn: readonly string[];
}

export interface TypedPlace {
  readonly shop: string;
  readonly aisle: string;
  readonly url: string;
  readonly price: string;
  readonly priceOn: string;
}

export interface TypedDisclosure {
  readonly kind: string;
  readonly text: string;
  /** Names with commas between them. */
  readonly shops: string;
  readonly foods: readonly string[];
}

type Json = Readonly<Record<string, unknown>>;

export const emptyPlace: TypedPlace = { shop: '', aisle: '', url: '', price: '', priceOn: '' };

/** The form of a guide's JSON; what is missing or of another kind is empty. */
export function typedGuide(json: GuideTyped): TypedGuide {
  const { title, purpose, whoItIsFor, publishedOn, survey, settingsNotes, arrangement, aisles, portionNotes, whereToBuy, ...more } = json;
  const { photos, leftOut, author, disclosures, cautions, corrections, recheckAfterDays, ...rest } = more;
  const judged: NonNullable<GuideTyped['survey']> = record(survey);
  const writer: NonNullable<GuideTyped['author']> = record(author);
  return {
    title: text(title),
    purpose: text(purpose),
    whoItIsFor: text(whoItIsFor),
    publishedOn: text(publishedOn),
    authorName: text(writer.name),
    credentials: text(writer.credentials),
    survey: {
      category: text(judged.category),
      plateId: text(judged.plateId),
      yardstickId: text(judged.yardstickId),
      setting: text(judged.setting),
      servings: text(judged.servings),
      switchedOn: list(judged.switchedOn).map(text),
    },
    settingsNotes: texts(settingsNotes),
    arrangement: text(arrangement) || 'shelf',
    aisles: list(aisles).map(text).join('\n'),
    portionNotes: texts(portionNotes),
    whereToBuy: mapped(whereToBuy, places => list(places).map(place => ({ ...emptyPlace, ...texts(place) }))),
    photos: mapped(photos, photo => ({ dataUrl: text(record(photo).dataUrl), alt: text(record(photo).alt) })),
    leftOut: Object.fromEntries(list(leftOut).map(one => [text(record(one).foodId), text(record(one).reason)])),
    disclosures: list(disclosures).map(one => {
      const { kind, text: words, shops, foods } = record(one);
      return { kind: text(kind), text: text(words), shops: list(shops).map(text).join(', '), foods: list(foods).map(text) };
    }),
    cautions: list(cautions).map(text).join('\n'),
    corrections: list(corrections).map(one => ({ on: text(record(one).on), text: text(record(one).text) })),
    recheckAfterDays: text(recheckAfterDays) || '180',
    rest,
  };
}

/** The JSON of a form: empty fields that a guide may lack are left out, the others stay empty, so that they are told. */
export function guideOf(typed: TypedGuide): GuideTyped {
  const { survey, disclosures } = typed;
  const servings = Number(survey.servings);
  const days = Number(typed.recheckAfterDays);
  return {
    ...typed.rest,
    title: typed.title,
    purpose: typed.purpose,
    whoItIsFor: typed.whoItIsFor,
    publishedOn: typed.publishedOn,
    author: { name: typed.authorName, ...given({ credentials: typed.credentials }) },
    survey: {
      category: survey.category,
      plateId: survey.plateId,
      yardstickId: survey.yardstickId,
      ...given({ setting: survey.setting }),
      ...(survey.servings === '' ? {} : { servings: Number.isFinite(servings) ? servings : survey.servings }),
      switchedOn: survey.switchedOn,
    },
    settingsNotes: given(typed.settingsNotes),
    arrangement: typed.arrangement,
    aisles: lines(typed.aisles),
    portionNotes: given(typed.portionNotes),
    whereToBuy: Object.fromEntries(
      Object.entries(typed.whereToBuy).flatMap(([id, places]) => {
        const named = places.map(place => given(place)).filter(place => Object.keys(place).length > 0);
        return named.length === 0 ? [] : [[id, named]];
      }),
    ),
    photos: typed.photos,
    leftOut: Object.entries(typed.leftOut).map(([foodId, reason]) => ({ foodId, reason })),
    disclosures: disclosures.map(({ kind, text: words, shops, foods }) => {
      const names = shops.split(',').map(name => name.trim());
      const named = names.filter(name => name !== '');
      return { kind, text: words, ...(named.length === 0 ? {} : { shops: named }), ...(foods.length === 0 ? {} : { foods }) };
    }),
    cautions: lines(typed.cautions),
    corrections: typed.corrections,
    recheckAfterDays: Number.isFinite(days) ? days : typed.recheckAfterDays,
  };
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
}

function record(value: unknown): Json {
  return isObject(value) ? value : {};
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function mapped<Value>(value: unknown, of: (value: unknown) => Value): Record<string, Value> {
  return Object.fromEntries(Object.entries(record(value)).map(([key, one]) => [key, of(one)]));
}

function texts(value: unknown): Record<string, string> {
  return mapped(value, text);
}

/** The entries that hold something. */
function given(entries: Readonly<Record<string, string>> | TypedPlace): Record<string, string> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value.trim() !== ''));
}

function lines(value: string): readonly string[] {
  return value.split('\n').filter(line => line.trim() !== '');
}
