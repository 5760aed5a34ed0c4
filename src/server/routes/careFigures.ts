import { createRoute, z } from '@hono/zod-openapi';
import { clinicFigures, describeClinicFigures, setClinicFigure } from '#app/clients/clinicFigures.ts';
import { localDay } from '#app/clients/localDay.ts';
import { type CareFigureId, careFigureIds } from '#core/client/rules/careFigures.ts';
import { clinicFigureSchema } from '#core/client/rules/clinicFigure.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

/** Which ids there are is for the core to say, in its own words; the compiler holds callers to them. */
const figureId = z.custom<CareFigureId>(id => typeof id === 'string').openapi({ type: 'string', enum: [...careFigureIds] });

const body = z
  .object({
    version: z.number(),
    figures: z.array(
      z.object({
        id: z.enum(careFigureIds),
        title: z.string(),
        unit: z.string(),
        usual: z.number(),
        lo: z.number(),
        hi: z.number(),
        set: clinicFigureSchema.omit({ id: true }).optional(),
      }),
    ),
  })
  .openapi('CareFigures');

/** The figures that a clinic may set by its own policy. They lie with the clients: locked, exported and erased with them. */
export function careFigureRoutes({ vault, now, log }: World) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/care-figures', responses: answers(body, 'Usual figures and those of the clinic') }),
      async context => context.json(describeClinicFigures(await clinicFigures(vault)), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/care-figures',
        request: {
          body: jsonBody(
            z.object({ version: z.number().int().min(0), id: figureId, value: z.number(), by: z.string().trim().min(1).max(200) }),
          ),
        },
        responses: answers(body, 'The figures with the one that was set today'),
      }),
      async context => {
        const { version, ...figure } = context.req.valid('json');
        await setClinicFigure({ ...figure, on: localDay(now()) }, version, vault);
        return context.json(describeClinicFigures(await clinicFigures(vault)), 200);
      },
    );
}
