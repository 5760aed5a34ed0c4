import type { AdditiveClass, AdditiveFinding, Certainty } from '#core/additive/additive.ts';
import type { ReadLabel } from '#core/label/label.ts';

const classes: readonly AdditiveClass[] = ['phosphate', 'potassium', 'sodium'];

const certaintyWords: Readonly<Record<Certainty, string>> = {
  named: '',
  alternative: ' (one of several)',
  'may-contain': ' (may be in it)',
  possible: ' (possible)',
  misspelled: ' (misspelled on the label)',
};

/**
 * The additives of each class as sentences: "Phosphate and potassium additives: none named on the label.", "Sodium additives: salt."
 * Baking powder alone: "Phosphate additives: baking powder (possible)." Without a statement they are unknown, not absent.
 */
export function additiveWords({ statement, additives }: ReadLabel): readonly string[] {
  if (statement === undefined) return ['Additives: unknown, the ingredient statement was not read.'];
  const named = (kind: AdditiveClass): string[] => [
    // Baking powder may hold a phosphate: "none named" would hide it.
    ...new Set(additives.filter(one => (one.counts || one.certainty === 'possible') && one.class === kind).map(additiveName)),
  ];
  const none = classes.filter(kind => named(kind).length === 0);
  return [
    ...classes.filter(kind => !none.includes(kind)).map(kind => `${upperFirst(kind)} additives: ${named(kind).join(', ')}.`),
    ...(none.length === 0 ? [] : [`${upperFirst(listed(none))} additives: none named on the label.`]),
  ];
}

function additiveName({ name, certainty }: AdditiveFinding): string {
  return name + certaintyWords[certainty];
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
