import { createRoute, z } from '@hono/zod-openapi';
import { rulesOrUsual } from '#app/clients/clinicFigures.ts';
import { describeProposal } from '#app/clients/describeProposal.ts';
import { localDay } from '#app/clients/localDay.ts';
import { labsFromTable } from '#app/labs/labsFromTable.ts';
import { labsFromFhir } from '#core/client/fhir/labsFromFhir.ts';
import { personOfFhir } from '#core/client/fhir/subject.ts';
import { Fault } from '#core/errors.ts';
import { assessmentBody, labResultAnswer, weightBasis } from '../clientBodies.ts';
import { readAssessment } from '../clientRecords.ts';
import { newApi } from '../newApi.ts';
import { proposalBody } from '../proposalBodies.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Fault('assessment-not-valid', 'The results are no readable JSON.');
  }
}

const dayOrder = z.enum(['month-first', 'day-first']);

/** What an assessment comes to while it is typed; nothing is kept. */
export function clientDraftRoutes({ readTable, now, log, vault }: World) {
  return newApi(log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/propose',
        request: { body: jsonBody(z.object({ assessment: assessmentBody, pick: weightBasis })) },
        responses: answers(proposalBody, 'What an assessment proposes, while it is typed; keeps nothing'),
      }),
      async context => {
        const given = context.req.valid('json');
        return context.json(
          describeProposal(readAssessment(given.assessment), localDay(now()), given.pick, await rulesOrUsual(vault)),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/labs',
        request: { body: jsonBody(z.object({ text: z.string().max(5_000_000), dayOrder: dayOrder.optional() })) },
        responses: answers(
          z.object({
            labs: z.array(labResultAnswer),
            issues: z.array(z.string()),
            person: z.object({ name: z.string().optional(), bornOn: z.string().optional() }),
            guessedOrder: z.object({ order: dayOrder, example: z.string() }).optional(),
          }),
          'Results read from a table or from FHIR R4 Observations, with what could not be read, whose they are by the file, and how days of figures were read where nothing shows it; keeps nothing',
        ),
      }),
      async context => {
        const { text, dayOrder: order } = context.req.valid('json');
        const json = /^\s*[[{]/.test(text) ? parsedJson(text) : undefined;
        const { value, issues, ...about } =
          json === undefined
            ? labsFromTable(await readTable(new TextEncoder().encode(text)), localDay(now()), order)
            : { ...labsFromFhir(json), person: personOfFhir(json) };
        const told = issues.map(
          ({ place, found, expected }) =>
            `${place.row === undefined ? (place.heading ?? '') : `row ${place.row}`}: found ${found}, expected ${expected}`,
        );
        return context.json({ labs: [...value], issues: told, ...about }, 200);
      },
    );
}
