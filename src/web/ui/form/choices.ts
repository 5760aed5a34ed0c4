/** A closed list: what is kept, and what it is called. */
export type Choices<Key extends string> = readonly (readonly [key: Key, words: string])[];

/** A list whose keys are their own words. */
export function plainChoices<const Key extends string>(keys: readonly Key[]): Choices<Key> {
  return keys.map(key => [key, key]);
}

/** A list with what stands for no choice before it, kept as an empty text. */
export function orNone<Key extends string>(words: string, choices: Choices<Key>): Choices<Key | ''> {
  return [['', words], ...choices];
}
