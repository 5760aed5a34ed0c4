import { createRoute, z } from '@hono/zod-openapi';
import { assessmentFields } from '#core/client/formulas/catalog/assessmentFields.ts';
import { formulaSubjects } from '#core/client/formulas/catalog/formula.ts';
import { findFormula, formulaCatalog, runFormula } from '#core/client/formulas/catalog/formulaCatalog.ts';
import { formulaToJson, resultToJson } from '#core/client/formulas/catalog/formulaToJson.ts';
import { Fault } from '#core/errors.ts';
import { issueBody, range } from '../bodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const formulaBody = z
  .object({
    name: z.string(),
    title: z.string(),
    subject: z.enum(formulaSubjects),
    purpose: z.string(),
    inputs: z.array(
      z.object({
        name: z.string(),
        label: z.string(),
        kind: z.enum(['figure', 'choice', 'yes-no']),
        required: z.boolean(),
        help: z.string().optional(),
        /** Of a figure; `possible` is its range in that unit. */
        units: z.array(z.object({ unit: z.string(), possible: z.string() })),
        options: z.array(z.object({ key: z.string(), words: z.string() })),
      }),
    ),
    /** In plain math with its units, a line each. */
    formula: z.array(z.string()),
    results: z.array(z.object({ name: z.string(), label: z.string(), unit: z.string().optional() })),
    example: z.object({
      inputs: z.record(z.string(), z.string()),
      results: z.array(z.object({ name: z.string(), label: z.string(), text: z.string() })),
      source: z.string(),
    }),
    sources: z.array(z.string()),
    cautions: z.array(z.string()),
    /** Fields of an assessment that a result is the value of. */
    fills: z.array(z.object({ result: z.string(), field: z.enum(assessmentFields), label: z.string() })),
  })
  .openapi('Formula');

const shown = { name: z.string(), label: z.string(), text: z.string() };
const workedBody = z
  .object({
    /** Null while something stands in the way. */
    results: z
      .array(
        z.discriminatedUnion('kind', [
          z.object({ kind: z.literal('figure'), ...shown, value: z.number(), rounded: z.number(), unit: z.string() }),
          z.object({ kind: z.literal('range'), ...shown, range, rounded: range, unit: z.string() }),
          z.object({ kind: z.literal('words'), ...shown }),
        ]),
      )
      .nullable(),
    issues: z.array(issueBody),
  })
  .openapi('FormulaWorked');

/** A figure as a number, as text with its unit ("72 kg"), or apart; the key of a choice, yes or no. The formula says which. */
const inputJson = z.union([
  z.number(),
  z.string().max(200),
  z.boolean(),
  z.object({ value: z.union([z.number(), z.string().max(60)]), unit: z.string().max(60) }),
]);
const inputsBody = z.object({ inputs: z.record(z.string().max(60), inputJson) }).openapi('FormulaInputs');

/** The formulas of the catalog and what they give. Nothing that is typed here is kept or logged. */
export function formulaRoutes({ log }: Pick<World, 'log'>) {
  return newApi(log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/formulas',
        responses: answers(
          z.array(formulaBody),
          'Every formula: inputs with units and possible ranges, plain math, worked example, sources, cautions',
        ),
      }),
      context => context.json(formulaCatalog.map(formulaToJson), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/formulas/{name}',
        request: { params: z.object({ name: z.string() }), body: jsonBody(inputsBody) },
        responses: answers(
          workedBody,
          'Results with text and full precision, or every input that stands in the way; keeps and logs nothing',
        ),
      }),
      context => {
        const { name } = context.req.valid('param');
        if (findFormula(name) === undefined) throw new Fault('formula-not-found', 'There is no such formula.');
        const { value, issues } = runFormula(name, context.req.valid('json').inputs);
        return context.json({ results: value === undefined ? null : resultToJson(value), issues: issues.map(one => ({ ...one })) }, 200);
      },
    );
}
