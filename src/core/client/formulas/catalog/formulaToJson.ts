import { sourceWords } from '#core/client/rules/source.ts';
import { type IntervalJson, intervalToJson } from '#core/quantity/interval.ts';
import type { Formula } from './formula.ts';
import type { InputFacts } from './formulaInput.ts';
import { type FormulaResult, printedWords } from './formulaResult.ts';
import { rangeWords } from './readInput.ts';

/** A unit with the range that is possible in it. */
interface UnitJson {
  readonly unit: string;
  readonly possible: string;
}

interface InputJson {
  readonly name: string;
  readonly label: string;
  readonly kind: InputFacts['kind'];
  readonly required: boolean;
  readonly help?: string;
  /** Of a figure: where there are several, one of them is named with it. */
  readonly units: UnitJson[];
  /** Of a choice, and of yes or no. */
  readonly options: { readonly key: string; readonly words: string }[];
}

/** A formula's description as it is sent and printed. */
export function formulaToJson({ name, title, subject, purpose, inputs, formula, results, example, sources, cautions, fills }: Formula) {
  return {
    name,
    title,
    subject,
    purpose,
    inputs: inputs.map(inputToJson),
    formula: [...formula],
    results: Object.entries(results).map(([key, { label, unit }]) => ({ name: key, label, ...(unit === undefined ? {} : { unit }) })),
    example: {
      inputs: { ...example.inputs },
      results: Object.entries(example.results).map(([key, printed]) => {
        const shown = results[key] ?? { label: key };
        return { name: key, label: shown.label, text: printedWords(printed, shown) };
      }),
      source: example.source,
    },
    sources: sources.map(sourceWords),
    cautions: [...cautions],
    fills: fills.map(({ result, field, label }) => ({ result, field, label })),
  };
}

function inputToJson(input: Formula['inputs'][number]): InputJson {
  const { name, label, kind, required } = input;
  const shared = { name, label, kind, required };
  if (input.kind === 'figure') {
    return {
      ...shared,
      ...(input.help === undefined ? {} : { help: input.help }),
      units: input.units.map(unit => ({ unit: unit[0], possible: rangeWords(input, unit) })),
      options: [],
    };
  }
  const options = input.kind === 'yes-no' ? (['yes', 'no'] as const).map(one => [one, one] as const) : input.options;
  return { ...shared, units: [], options: options.map(([key, words]) => ({ key, words })) };
}

/** Results as they are sent and printed: ready text, and figures at full precision. */
export function resultToJson(result: FormulaResult) {
  return result.map(one => {
    const { name, label, text } = one;
    if (one.kind === 'words') return { kind: one.kind, name, label, text };
    if (one.kind === 'figure') return { kind: one.kind, name, label, text, value: one.value, rounded: one.rounded, unit: one.unit };
    return {
      kind: one.kind,
      name,
      label,
      text,
      range: openable(intervalToJson(one.range)),
      rounded: openable(intervalToJson(one.rounded)),
      unit: one.unit,
    };
  });
}

function openable([lo, hi]: IntervalJson): [number, number | null] {
  return [lo, hi];
}
