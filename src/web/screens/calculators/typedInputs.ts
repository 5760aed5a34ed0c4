import type { Formula } from '../../api.ts';
import type { TypedFigure } from '../../ui/form/Figure.tsx';

/** What stands in the fields of a formula, as it was typed: a figure, or the key of a choice; empty while nothing is typed. */
export type TypedInputs = Readonly<Record<string, TypedFigure>>;

type Input = Formula['inputs'][number];

/** Empty fields: no choice is made for anybody; a figure has the first of its units, to be seen beside it. */
export function emptyInputs(inputs: readonly Input[]): TypedInputs {
  return Object.fromEntries(inputs.map(({ name, units }) => [name, { text: '', unit: units[0]?.unit ?? '' }]));
}

/** The worked example in the fields: "5 ft 10 in" is 5 ft 10 in of the unit feet and inches. */
export function exampleInputs({ inputs, example }: Formula): TypedInputs {
  const typed = Object.entries(emptyInputs(inputs)).map(([name, start]): [string, TypedFigure] => {
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
export function inputsOf(inputs: readonly Input[], typed: TypedInputs): Record<string, SentInput> {
  return Object.fromEntries(
    inputs.flatMap(({ name, kind }): [string, SentInput][] => {
      const { text = '', unit = '' } = typed[name] ?? {};
      if (text.trim() === '') return [];
      return [[name, kind === 'figure' ? { value: text.trim(), unit } : text]];
    }),
  );
}
