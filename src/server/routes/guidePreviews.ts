import { createRoute, z } from '@hono/zod-openapi';
import { guideInHand, previewGuide } from '#app/guides/previewGuide.ts';
import type { Previews } from '#app/previews.ts';
import { Fault } from '#core/errors.ts';
import { guideHtml } from '#core/guide/html/guideHtml.ts';
import { exactDress, guideJson, guidePreview, pageDress } from '../guideBodies.ts';
import { newApi } from '../newApi.ts';
import { pagePolicy } from '../pagePolicy.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';

/** A guide as it is being written: what it comes to, its page and its sheets of paper. */
export function guidePreviewRoutes(world: World, previews: Previews) {
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/guide-previews',
        request: { body: jsonBody(z.object({ guide: guideJson, guideId: z.string(), dress: pageDress.default({ largePrint: false }) })) },
        responses: answers(guidePreview, 'What the guide comes to, and where its page can be looked at'),
      }),
      async context => {
        const { guide, guideId, dress } = context.req.valid('json');
        return context.json(await previewGuide(guide, guideId, exactDress(dress), previews, world), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/guide-previews/paper',
        request: { body: jsonBody(z.object({ guide: guideJson, guideId: z.string(), dress: pageDress })) },
        responses: fileAnswer('application/pdf', 'The pages as paper will have them'),
      }),
      async context => {
        const { guide, guideId, dress } = context.req.valid('json');
        const print = world.pdfPrinter(context.req.raw.signal);
        const { page } = await guideInHand(guide, guideId, world);
        if (page === undefined)
          throw new Fault('guide-not-valid', 'Something is still to be written; the places are listed beside the form.');
        const pdf = await print(guideHtml(page, exactDress(dress)));
        return fileBody(pdf, 'application/pdf');
      },
    );
}

export function previewResponse(id: string, previews: Previews): Response {
  const html = previews.page(id);
  if (html === undefined) throw new Fault('not-found', 'This preview is an old one.');
  return fileBody(html, 'text/html; charset=utf-8', { 'content-security-policy': pagePolicy });
}
