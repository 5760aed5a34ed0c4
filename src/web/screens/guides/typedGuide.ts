import type { GuideTyped } from '#core/guide/guideFromJson.ts';
import { isObject } from '#core/json/presentForm.ts';
import { settings } from '#core/yardstick/yardstick.ts';

/** A guide as its form holds it: every field is there, lists that are typed one a line are texts. */
export interface TypedGuide {
  readonly title: string;
  readonly purpose: string;
  readonly whoItIsFor: string;
  readonly publishedOn: string;
  readonly author: { readonly name: string; readonly credentials: string };
  readonly survey: TypedSurvey;
  readonly settingsNotes: readonly { readonly setting: string; readonly note: string }[];
  readonly arrangement: string;
  readonly aisles: string;
  /** In no order; a food of which nothing is said may be missing. */
  readonly foods: readonly TypedFood[];
  readonly leftOut: readonly { readonly foodId: string; readonly reason: string }[];
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

/** What is said of one food. The JSON has each of these by food, under the same name. */
export interface TypedFood {
  readonly foodId: string;
  readonly portionNotes: string;
  readonly whereToBuy: readonly TypedPlace[];
  /** Without a picture both are empty. */
  readonly photos: { readonly dataUrl: string; readonly alt: string };
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
  const notes = texts(settingsNotes);
  const judged: NonNullable<GuideTyped['survey']> = record(survey);
  const writer: NonNullable<GuideTyped['author']> = record(author);
  return {
    title: text(title),
    purpose: text(purpose),
    whoItIsFor: text(whoItIsFor),
    publishedOn: text(publishedOn),
    author: { name: text(writer.name), credentials: text(writer.credentials) },
    survey: {
      category: text(judged.category),
      plateId: text(judged.plateId),
      yardstickId: text(judged.yardstickId),
      setting: text(judged.setting),
      servings: text(judged.servings),
      switchedOn: list(judged.switchedOn).map(text),
    },
    settingsNotes: [...new Set([...settings, ...Object.keys(notes)])].map(setting => ({ setting, note: notes[setting] ?? '' })),
    arrangement: text(arrangement) || 'shelf',
    aisles: list(aisles).map(text).join('\n'),
    foods: [...new Set([portionNotes, whereToBuy, photos].flatMap(said => Object.keys(record(said))))].map(foodId => {
      const photo = record(record(photos)[foodId]);
      return {
        foodId,
        portionNotes: text(record(portionNotes)[foodId]),
        whereToBuy: list(record(whereToBuy)[foodId]).map(place => ({ ...emptyPlace, ...texts(place) })),
        photos: { dataUrl: text(photo.dataUrl), alt: text(photo.alt) },
      };
    }),
    leftOut: list(leftOut).map(one => ({ foodId: text(record(one).foodId), reason: text(record(one).reason) })),
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
  const { survey, author, foods, disclosures } = typed;
  const servings = Number(survey.servings);
  const days = Number(typed.recheckAfterDays);
  return {
    ...typed.rest,
    title: typed.title,
    purpose: typed.purpose,
    whoItIsFor: typed.whoItIsFor,
    publishedOn: typed.publishedOn,
    author: { name: author.name, ...given({ credentials: author.credentials }) },
    survey: {
      category: survey.category,
      plateId: survey.plateId,
      yardstickId: survey.yardstickId,
      ...given({ setting: survey.setting }),
      ...(survey.servings === '' ? {} : { servings: Number.isFinite(servings) ? servings : survey.servings }),
      switchedOn: survey.switchedOn,
    },
    settingsNotes: given(Object.fromEntries(typed.settingsNotes.map(({ setting, note }) => [setting, note]))),
    arrangement: typed.arrangement,
    aisles: lines(typed.aisles),
    portionNotes: given(Object.fromEntries(foods.map(food => [food.foodId, food.portionNotes]))),
    whereToBuy: Object.fromEntries(
      foods.flatMap(({ foodId, whereToBuy }) => {
        const named = whereToBuy
          .filter(place => Object.keys(given(place)).length > 0)
          .map(({ shop, ...place }) => ({ shop, ...given(place) }));
        return named.length === 0 ? [] : [[foodId, named]];
      }),
    ),
    photos: Object.fromEntries(foods.flatMap(({ foodId, photos }) => (photos.dataUrl === '' ? [] : [[foodId, photos]]))),
    leftOut: typed.leftOut,
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

/** What is said of a food; of one that nothing is said of yet, an empty form. */
export function foodIn(foods: readonly TypedFood[], foodId: string): TypedFood {
  return foods.find(one => one.foodId === foodId) ?? { foodId, portionNotes: '', whereToBuy: [], photos: { dataUrl: '', alt: '' } };
}

/** The foods with what is now said of one of them. */
export function withFood(foods: readonly TypedFood[], food: TypedFood): readonly TypedFood[] {
  const at = foods.findIndex(({ foodId }) => foodId === food.foodId);
  return at < 0 ? [...foods, food] : foods.with(at, food);
}

/** Where the JSON has what stands at a place of a food's form. @example placeOfFood('f1', 'whereToBuy[0].url') // 'whereToBuy.f1[0].url' */
export function placeOfFood(foodId: string, place: string): string {
  return place.replace(/^\w+/, name => `${name}.${foodId}`);
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

function texts(value: unknown): Record<string, string> {
  return Object.fromEntries(Object.entries(record(value)).map(([key, one]) => [key, text(one)]));
}

/** The entries that hold something. */
function given(entries: Readonly<Record<string, string>> | Partial<TypedPlace>): Record<string, string> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value.trim() !== ''));
}

function lines(value: string): readonly string[] {
  return value.split('\n').filter(line => line.trim() !== '');
}
