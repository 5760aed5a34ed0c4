import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import { isObject } from '#core/json/presentForm.ts';

/** A handout as its form holds it: every field is there, lists that are typed are texts. */
export interface TypedHandout {
  readonly language: string;
  readonly title: string;
  readonly reader: string;
  readonly authorName: string;
  readonly credentials: string;
  readonly callUs: string;
  /** With an empty line between two notes. */
  readonly notes: string;
  readonly parts: readonly string[];
  readonly categories: readonly TypedCategory[];
  /** One a line. */
  readonly aisleOrder: string;
  /** What this form does not know: it goes back as it came. */
  readonly rest: HandoutTyped;
}

export interface TypedCategory {
  readonly category: string;
  readonly title: string;
  readonly plateId: string;
  readonly meal: string;
  readonly aisle: string;
  readonly foodAisles: Readonly<Record<string, string>>;
  readonly leftOut: readonly string[];
}

export type Json = Readonly<Record<string, unknown>>;

export const partNames: Readonly<Record<string, string>> = {
  fridge: 'fridge page',
  numbers: 'numbers',
  foods: 'foods that fit',
  labels: 'how to read a label',
  swaps: 'swaps',
  shopping: 'shopping list',
};

export function typedHandout(json: HandoutTyped): TypedHandout {
  const { language, title, reader, author, callUs, notes, parts, categories, aisleOrder, ...rest } = json;
  const writer = record(author);
  return {
    language: text(language) || 'en',
    title: text(title),
    reader: text(reader),
    authorName: text(writer.name),
    credentials: text(writer.credentials),
    callUs: text(callUs),
    notes: list(notes).map(text).join('\n\n'),
    parts: parts === undefined ? Object.keys(partNames) : list(parts).map(text),
    categories: list(categories).map(one => {
      const given = record(one);
      return {
        category: text(given.category),
        title: text(given.title),
        plateId: text(given.plateId),
        meal: text(given.meal),
        aisle: text(given.aisle),
        foodAisles: Object.fromEntries(Object.entries(record(given.foodAisles)).map(([id, aisle]) => [id, text(aisle)])),
        leftOut: list(given.leftOut).map(text),
      };
    }),
    aisleOrder: list(aisleOrder).map(text).join('\n'),
    rest,
  };
}

/** The JSON of a form: empty fields that a handout may lack are left out, the others stay empty, so that they are told. */
export function handoutOf(typed: TypedHandout): HandoutTyped {
  const { language, title, reader, callUs, parts } = typed;
  return {
    ...typed.rest,
    language,
    ...filled({ title, reader, callUs }),
    author: { name: typed.authorName, ...filled({ credentials: typed.credentials }) },
    notes: typed.notes.split(/\n\s*\n/).filter(note => note.trim() !== ''),
    parts,
    categories: typed.categories.map(({ category, plateId, foodAisles, leftOut, ...more }) => ({
      category,
      plateId,
      ...filled(more),
      foodAisles: filled(foodAisles),
      leftOut,
    })),
    aisleOrder: typed.aisleOrder.split('\n').filter(aisle => aisle.trim() !== ''),
  };
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

function record(value: unknown): Json {
  return isObject(value) ? value : {};
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function filled(entries: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value.trim() !== ''));
}
