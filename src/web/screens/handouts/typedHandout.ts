import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import { isObject } from '#core/json/presentForm.ts';
import type { Choices } from '../../ui/form/choices.ts';

/** A handout as its form holds it: every field is there, lists that are typed are texts. */
export interface TypedHandout {
  readonly language: string;
  readonly title: string;
  readonly reader: string;
  readonly author: { readonly name: string; readonly credentials: string };
  readonly callUs: string;
  /** With an empty line between two notes. */
  readonly notes: string;
  readonly parts: readonly string[];
  readonly categories: readonly TypedCategory[];
  /** One a line. */
  readonly aisleOrder: string;
  /** Both empty in a client's handout, whose record says them. */
  readonly setting: string;
  readonly topic: { readonly yardstickId: string; readonly switchedOn: readonly string[] };
  /** What this form does not know: it goes back as it came. */
  readonly rest: HandoutTyped;
}

export interface TypedCategory {
  readonly category: string;
  readonly title: string;
  readonly plateId: string;
  readonly meal: string;
  readonly aisle: string;
  readonly foodAisles: readonly { readonly foodId: string; readonly aisle: string }[];
  readonly leftOut: readonly string[];
}

type Json = Readonly<Record<string, unknown>>;

export const partNames: Choices<string> = [
  ['fridge', 'fridge page'],
  ['numbers', 'numbers'],
  ['foods', 'foods that fit'],
  ['labels', 'how to read a label'],
  ['swaps', 'swaps'],
  ['shopping', 'shopping list'],
];

export function typedHandout(json: HandoutTyped): TypedHandout {
  const { language, title, reader, author, callUs, notes, parts, categories, aisleOrder, setting, topic, ...rest } = json;
  const writer = record(author);
  const judged = record(topic);
  return {
    language: text(language) || 'en',
    title: text(title),
    reader: text(reader),
    author: { name: text(writer.name), credentials: text(writer.credentials) },
    callUs: text(callUs),
    notes: list(notes).map(text).join('\n\n'),
    parts: parts === undefined ? partNames.map(([part]) => part) : list(parts).map(text),
    categories: list(categories).map(one => {
      const given = record(one);
      return {
        category: text(given.category),
        title: text(given.title),
        plateId: text(given.plateId),
        meal: text(given.meal),
        aisle: text(given.aisle),
        foodAisles: Object.entries(record(given.foodAisles)).map(([foodId, aisle]) => ({ foodId, aisle: text(aisle) })),
        leftOut: list(given.leftOut).map(text),
      };
    }),
    aisleOrder: list(aisleOrder).map(text).join('\n'),
    setting: text(setting),
    topic: { yardstickId: text(judged.yardstickId), switchedOn: list(judged.switchedOn).map(text) },
    rest,
  };
}

/** The JSON of a form: empty fields that a handout may lack are left out, the others stay empty, so that they are told. */
export function handoutOf(typed: TypedHandout): HandoutTyped {
  const { language, title, reader, author, callUs, parts, setting, topic } = typed;
  return {
    ...typed.rest,
    language,
    ...filled({ title, reader, callUs, setting }),
    ...(topic.yardstickId === '' ? {} : { topic }),
    author: { name: author.name, ...filled({ credentials: author.credentials }) },
    notes: typed.notes.split(/\n\s*\n/).filter(note => note.trim() !== ''),
    parts,
    categories: typed.categories.map(({ category, plateId, foodAisles, leftOut, ...more }) => ({
      category,
      plateId,
      ...filled(more),
      foodAisles: filled(Object.fromEntries(foodAisles.map(({ foodId, aisle }) => [foodId, aisle]))),
      leftOut,
    })),
    aisleOrder: typed.aisleOrder.split('\n').filter(aisle => aisle.trim() !== ''),
  };
}

/** Whether both are the same paper, however their fields were left empty. */
export function isSameHandout(one: TypedHandout, other: TypedHandout): boolean {
  return JSON.stringify(handoutOf(one)) === JSON.stringify(handoutOf(other));
}

/** What it is called in a list. */
export function titleOf({ title }: Pick<HandoutTyped, 'title'>): string {
  return typeof title === 'string' && title.trim() !== '' ? title : 'A handout without a title';
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
