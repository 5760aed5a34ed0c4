import type { Formula } from '../../api.ts';

/** What stands in the fields of a formula, as it was typed. */
export type Typed = Readonly<Record<string, TypedInput>>;

export interface TypedInput {
  /** A figure, or the key of a choice; empty while nothing is typed. */
  readonly text: string;
  readonly unit: string;
}

const empty: TypedInput = { text: '', unit: '' };

type Input = Formula['inputs'][number];

/** Empty fields: no choice is made for anybody; a figure has the first of its units, to be seen beside it. */
export function emptyInputs(inputs: readonly Input[]): Typed {
  return Object.fromEntries(inputs.map(({ name, units }) => [name, { ...empty, unit: units[0]?.unit ?? '' }]));
}

/** The worked example in the fields: "5 ft 10 in" is 5 ft 10 in of the unit feet and inches. */
export function exampleInputs({ inputs, example }: Formula): Typed {
  const typed = Object.entries(emptyInputs(inputs)).map(([name, start]): [string, TypedInput] => {
    const given = example.inputs[name];
    const input = inputs.find(one => one.name === name);
    if (given === undefined || input === undefined) return [name, start];
    if (input.kind !== 'figure') return [name, { ...start, text: given }];
    const unit = input.units.find(one => one.unit !== '' && given.endsWith(` ${one.unit}`))?.unit;
    const text = unit === undefined ? given : given.slice(0, -unit.length - 1);
    if (/ft/.test(given)) return [name, { ...start, text: given, unit: 'ft in' }];
    return [name, { ...start, text, unit: unit ?? start.unit }];
  });
  return Object.fromEntries(typed);
}

type SentInput = string | { value: string; unit: string };

/** What is sent: fields that are filled. */
export function inputsOf(inputs: readonly Input[], typed: Typed): Record<string, SentInput> {
  return Object.fromEntries(
    inputs.flatMap(({ name, kind }): [string, SentInput][] => {
      const { text, unit } = typed[name] ?? empty;
      if (text.trim() === '') return [];
      return [[name, kind === 'figure' ? { value: text.trim(), unit } : text]];
    }),
  );
}
