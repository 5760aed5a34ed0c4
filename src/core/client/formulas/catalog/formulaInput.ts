import { z } from 'zod';
import { asText, type FigureAsked, isNothing, notTaken, type Read, readFigure, taken } from './readInput.ts';

type Options<Key extends string> = readonly (readonly [key: Key, words: string])[];

/** What is asked for, as help, a form and the description show it. */
export type InputFacts =
  | (FigureAsked & { readonly kind: 'figure'; readonly required: boolean })
  | { readonly kind: 'choice'; readonly label: string; readonly required: boolean; readonly options: Options<string> }
  | { readonly kind: 'yes-no'; readonly label: string; readonly required: true };

/** The facts of every schema made here: describing an input and making its schema is one step, so that they never differ. */
const factsOfInput = z.registry<InputFacts>();

/** @throws RangeError for a schema that was not made here: a programming mistake, not a person's. */
export function inputFacts(schema: z.ZodType): InputFacts {
  const facts = factsOfInput.get(schema);
  if (facts === undefined) throw new RangeError('This schema is no input of a formula.');
  return facts;
}

/** A figure, in the first of its units whatever unit it came in. */
export function figure(label: string, units: FigureAsked['units'], lo: number, hi: number, help?: string): z.ZodType<number> {
  const asked = { label, units, lo, hi, ...(help === undefined ? {} : { help }) };
  return input({ kind: 'figure', required: true, ...asked }, json => {
    const read = readFigure(json, asked);
    return read.ok ? taken(read.value.canonical) : read;
  });
}

/** A figure that may be left out: then it is not known, never zero. */
export function optionalFigure(
  label: string,
  units: FigureAsked['units'],
  lo: number,
  hi: number,
  help?: string,
): z.ZodType<number | undefined> {
  const asked = { label, units, lo, hi, ...(help === undefined ? {} : { help }) };
  return input<number | undefined>({ kind: 'figure', required: false, ...asked }, json => {
    if (isNothing(json) || isNothing(figureOf(json))) return taken(undefined);
    const read = readFigure(json, asked);
    return read.ok ? taken(read.value.canonical) : read;
  });
}

/** A figure with the unit that it came in, for a formula whose cut-offs differ by unit. */
export function figureAsEntered<Unit extends string>(asked: FigureAsked<Unit>): z.ZodType<{ readonly value: number; readonly unit: Unit }> {
  return input<{ readonly value: number; readonly unit: Unit }>({ kind: 'figure', required: true, ...asked }, json => {
    const read = readFigure(json, asked);
    return read.ok ? taken({ value: read.value.entered, unit: read.value.unit }) : read;
  });
}

export function choice<const Key extends string>(label: string, options: Options<Key>): z.ZodType<Key> {
  return input({ kind: 'choice', label, required: true, options }, json =>
    isNothing(json) ? notTaken('input-missing', 'nothing', oneOf(options)) : among(json, options),
  );
}

/** One of them, or none. */
export function optionalChoice<const Key extends string>(label: string, options: Options<Key>): z.ZodType<Key | undefined> {
  return input<Key | undefined>({ kind: 'choice', label, required: false, options }, json =>
    isNothing(json) ? taken(undefined) : among(json, options),
  );
}

export function yesNo(label: string): z.ZodType<boolean> {
  const options = [
    ['yes', 'yes'],
    ['no', 'no'],
  ] as const;
  return input({ kind: 'yes-no', label, required: true }, json => {
    if (typeof json === 'boolean') return taken(json);
    if (isNothing(json)) return notTaken('input-missing', 'nothing', oneOf(options));
    const read = among(json, options);
    return read.ok ? taken(read.value === 'yes') : read;
  });
}

function input<Value>(facts: InputFacts, read: (json: unknown) => Read<Value>): z.ZodType<Value> {
  const schema = z.unknown().transform((json, context) => {
    const outcome = read(json);
    if (outcome.ok) return outcome.value;
    const { expected, ...params } = outcome.fault;
    context.addIssue({ code: 'custom', message: expected, params });
    return z.NEVER;
  });
  factsOfInput.add(schema, facts);
  return schema;
}

function among<Key extends string>(json: unknown, options: Options<Key>): Read<Key> {
  const found = options.find(([key]) => key === json);
  return found === undefined ? notTaken('choice-not-known', asText(json).slice(0, 40), oneOf(options)) : taken(found[0]);
}

function oneOf(options: Options<string>): string {
  return options.map(([key]) => key).join(' or ');
}

function figureOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null && 'value' in json ? json.value : json;
}
