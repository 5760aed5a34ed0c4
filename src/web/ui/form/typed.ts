import { useState } from 'react';

/** What one piece of a form needs: the value, what takes its place when it changes, and what is wrong with it. */
export interface Bound<Value> {
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  readonly wrong?: string | undefined;
}

type NamesOf<Values, Kind> = { [Name in keyof Values & string]: Values[Name] extends Kind ? Name : never }[keyof Values & string];
type ItemOf<List> = List extends readonly (infer Item)[] ? Item : never;

/** One entry of a list of the form, and the way to take it out. */
export interface TypedRow<Item> extends Typed<Item> {
  readonly remove: () => void;
}

/** A list of the form: its entries, each with fields of its own. */
export interface TypedRows<Item> {
  readonly each: readonly TypedRow<Item>[];
  readonly add: (...items: readonly Item[]) => void;
}

/**
 * What is typed into a form, or into a part of it. Every field is asked for by its name in `Values`: a misspelt one does not compile, nor
 * does a tick box on a text.
 */
export interface Typed<Values> {
  readonly values: Values;
  readonly set: (part: Partial<Values>) => void;
  readonly field: <Name extends keyof Values & string>(name: Name) => Bound<Values[Name]>;
  /** A part of the form that has fields of its own. */
  readonly part: <Name extends NamesOf<Values, object>>(name: Name) => Typed<Values[Name]>;
  readonly rows: <Name extends NamesOf<Values, readonly unknown[]>>(name: Name) => TypedRows<ItemOf<Values[Name]>>;
}

/** What is wrong, by the place of the field: "companions[0].amount". */
export type WrongAt = (place: string) => string | undefined;

/** A form, begun with these values. `wrongAt` says what stands beside which field. @example useTyped({ title: '' }).field('title') */
export function useTyped<Values extends object>(start: Values | (() => Values), wrongAt: WrongAt = () => undefined): Typed<Values> {
  const [values, setValues] = useState(start);
  return typedOf(values, setValues, wrongAt);
}

type Change<Values> = (next: (before: Values) => Values) => void;

/** The same over values that are kept elsewhere. `change` is given what makes the next values of those that stand. */
export function typedOf<Values>(values: Values, change: Change<Values>, wrongAt: WrongAt = () => undefined, place = ''): Typed<Values> {
  const placeOf = (name: string): string => (place === '' ? name : `${place}.${name}`);
  const put = <Name extends keyof Values>(name: Name, next: (before: Values[Name]) => Values[Name]): void =>
    change(before => ({ ...before, [name]: next(before[name]) }));
  return {
    values,
    set: part => change(before => ({ ...before, ...part })),
    field: name => ({ value: values[name], onChange: value => put(name, () => value), wrong: wrongAt(placeOf(name)) }),
    part: name => typedOf(values[name], next => put(name, next), wrongAt, placeOf(name)),
    rows: name => rowsOf(values[name], next => put(name, next), wrongAt, placeOf(name)),
  };
}

/** @param list the list of the form; the types of `Typed` see to it that it is one */
function rowsOf<List>(list: List, change: Change<List>, wrongAt: WrongAt, place: string): TypedRows<ItemOf<List>> {
  type Item = ItemOf<List>;
  const itemsOf = (given: unknown): readonly Item[] => (Array.isArray(given) ? given : []);
  const changeItems = (next: (before: readonly Item[]) => readonly Item[]): void =>
    change(before => next(itemsOf(before)) as List & readonly Item[]);
  return {
    each: itemsOf(list).map((item, at) => ({
      ...typedOf<Item>(item, next => changeItems(before => before.with(at, next(before[at]!))), wrongAt, `${place}[${at}]`),
      remove: () => changeItems(before => before.toSpliced(at, 1)),
    })),
    add: (...items) => changeItems(before => [...before, ...items]),
  };
}
