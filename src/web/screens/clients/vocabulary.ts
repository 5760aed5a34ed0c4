import { weightKinds } from '#core/client/assessment/vocabularies.ts';
import { type Setting, settings, settingWords } from '#core/client/setting.ts';
import type { Vocabulary } from '#core/client/vocabulary.ts';
import type { Choices } from '../../ui/form/choices.ts';

/** What can be chosen, each with the words that stand for it. */
export function choicesOf<Key extends string>({ keys, words }: Vocabulary<Key>): Choices<Key> {
  return keys.map(key => [key, words(key)]);
}

export const settingChoices: Choices<Setting> = settings.map(key => [key, settingWords[key]]);

export const weightKindChoices = choicesOf(weightKinds).map(
  ([key, words]) => [key, key === 'standard' ? 'standard (NHANES II)' : words] as const,
);

/** The one that a control or a file names. */
export function oneOf<Key extends string>(keys: readonly Key[], value: string): Key | undefined {
  return keys.find(key => key === value);
}
