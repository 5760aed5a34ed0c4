/** A closed list of the keys that a fact may have, each with its words. */
export interface Vocabulary<Key extends string> {
  readonly keys: readonly Key[];
  /** As it is read: `phosphate-binder` is "phosphate binder", `nsaid` "NSAID". */
  readonly words: (key: Key) => string;
}

export type KeyOf<List> = List extends Vocabulary<infer Key> ? Key : never;

/** `written` names the keys that are not read as they stand with blanks for hyphens: `{ nsaid: 'NSAID' }`. */
export function vocabulary<const Key extends string>(
  keys: readonly Key[],
  written: { readonly [Some in NoInfer<Key>]?: string } = {},
): Vocabulary<Key> {
  return { keys, words: key => written[key] ?? key.replaceAll('-', ' ') };
}
