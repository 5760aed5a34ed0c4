import { z } from 'zod';
import type { Source } from '#core/client/rules/source.ts';
import type { Issue, Reading } from '#core/errors.ts';
import type { Computed, Refused, RefusedWhy } from '../computed.ts';
import type { AssessmentField } from './assessmentFields.ts';
import { type InputFacts, inputFacts } from './formulaInput.ts';
import { type FormulaFigures, type FormulaResult, type ResultFacts, resultsShown } from './formulaResult.ts';
import { type InputFaultCode, inputFaultCodes } from './readInput.ts';

/** The subjects that the list is grouped by, in its order. */
export const formulaSubjects = ['kidney function', 'weight', 'protein and nutrition', 'minerals', 'dialysis', 'fluid'] as const;
export type FormulaSubject = (typeof formulaSubjects)[number];

export type FormulaIssueCode = InputFaultCode | RefusedWhy;

/** A field of the assessment that a result is the value of. */
export interface Fills {
  readonly result: string;
  readonly field: AssessmentField;
  readonly label: string;
}

export interface WorkedExample {
  /** As they are given: `{ "weight": "82 kg" }`. */
  readonly inputs: Readonly<Record<string, string>>;
  /** As the source prints it, rounded as it is shown. */
  readonly results: Readonly<Record<string, number | readonly [lo: number, hi: number] | string>>;
  readonly source: string;
}

/** A formula as a person meets it: what it is for, what it asks, how it is worked out, one worked result, and when not to believe it. */
export interface Formula {
  readonly name: string;
  readonly title: string;
  readonly subject: FormulaSubject;
  readonly purpose: string;
  readonly inputs: readonly (InputFacts & { readonly name: string })[];
  /** In plain math with its units, a line each. */
  readonly formula: readonly string[];
  readonly results: Readonly<Record<string, ResultFacts>>;
  readonly example: WorkedExample;
  readonly sources: readonly Source[];
  readonly cautions: readonly string[];
  readonly fills: readonly Fills[];
  readonly run: (inputs: Readonly<Record<string, unknown>>) => Reading<FormulaResult | undefined, FormulaIssueCode>;
}

/** Describes a formula once: inputs, their schema, and what is computed from them cannot differ. */
export function describeFormula<Inputs extends Readonly<Record<string, z.ZodType>>, const Name extends string>(
  described: Omit<Formula, 'inputs' | 'results' | 'fills' | 'run'> & {
    readonly inputs: Inputs;
    readonly results: Readonly<Record<Name, ResultFacts>>;
    readonly fills?: readonly (Fills & { readonly result: NoInfer<Name> })[];
    readonly compute: (given: z.output<z.ZodObject<Inputs>>) => Computed<FormulaFigures<NoInfer<Name>>>;
  },
): Formula {
  const { inputs, results, compute, fills = [], ...facts } = described;
  const names = Object.keys(inputs);
  const schema = z.object(inputs);
  return {
    ...facts,
    inputs: Object.entries(inputs).map(([name, input]) => ({ ...inputFacts(input), name })),
    results,
    fills,
    run(given) {
      // A key that is missing is an input that is not given; zod would not ask the input's own check about it.
      const checked = schema.safeParse(Object.fromEntries(names.map(name => [name, given[name]])));
      const issues: Issue<FormulaIssueCode>[] = [
        ...(checked.error?.issues ?? []).map(({ path, message, ...issue }) => ({
          ...told('params' in issue ? issue.params : undefined),
          place: { heading: String(path[0]) },
          expected: message,
        })),
        ...Object.keys(given)
          .filter(name => !names.includes(name))
          .map(name => ({
            code: 'input-not-known' as const,
            place: { heading: name },
            found: name,
            expected: `one of: ${names.join(', ')}`,
          })),
      ];
      if (!checked.success || issues.length > 0) return { value: undefined, issues };
      const outcome = compute(checked.data);
      if (outcome.kind === 'computed') return { value: resultsShown(results, outcome.value), issues };
      return { value: undefined, issues: [refusal(outcome, names)] };
    },
  };
}

/** What an input's own check told; every fault of a schema of ours carries it. */
function told(params: unknown): { readonly code: FormulaIssueCode; readonly found: string } {
  const { code, found } = z.object({ code: z.enum(inputFaultCodes), found: z.string() }).parse(params);
  return { code, found };
}

/** The input that a function's field is: `bunAfterMgPerDl` is `bunAfter`. Where several together cannot be there is no place. */
function refusal(
  { why, field, told: sentence, found = '', expected = sentence }: Refused,
  names: readonly string[],
): Issue<FormulaIssueCode> {
  const [heading] = names.filter(name => field.startsWith(name)).sort((a, b) => b.length - a.length);
  if (heading === undefined) return { code: why, place: {}, found: 'these figures together', expected: `others: ${sentence}` };
  return { code: why, place: { heading }, found, expected };
}
