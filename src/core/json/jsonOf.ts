import type { z } from 'zod';
import type { AsJson } from './asJson.ts';

/** The JSON that a codec's schema takes, read-only throughout: what is sent is never written to. */
export type JsonOf<Schema extends z.ZodType> = AsJson<z.input<Schema>>;

/**
 * The same while somebody is still typing it: everything may be missing, and a number, a day or a choice may be any words yet. Keys are
 * held to the schema all the same, so that a misspelt one does not compile.
 */
export type TypedOf<Schema extends z.ZodType> = AsTyped<z.input<Schema>>;

type AsTyped<Value> = unknown extends Value
  ? Value
  : Value extends readonly (infer Item)[]
    ? readonly AsTyped<Item>[]
    : Value extends object
      ? { readonly [Key in keyof Value]?: AsTyped<Value[Key]> }
      : Value extends number
        ? number | string
        : Value extends string
          ? string
          : Value;
