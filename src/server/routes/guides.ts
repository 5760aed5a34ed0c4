import { createRoute, z } from '@hono/zod-openapi';
import { buildGuideSite } from '#app/guides/buildGuideSite.ts';
import { keptGuide, keptGuideBuilt, publishedBuilt } from '#app/guides/builtGuide.ts';
import { describeGuide, describeGuideShort, namedGuide } from '#app/guides/describeGuide.ts';
import { guideFile, guideFileEnds } from '#app/guides/guideFiles.ts';
import { publishGuide } from '#app/guides/publishGuide.ts';
import { Fault } from '#core/errors.ts';
import { guideFull, guideJson, guideShort, publishedGuide } from '../guideBodies.ts';
import { newApi } from '../newApi.ts';
import { pagePolicy } from '../pagePolicy.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';
import { removalRoute } from './removal.ts';

const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });
const seen = z.object({ version: z.number().nullable() });
const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  svg: 'image/svg+xml; charset=utf-8',
  pdf: 'application/pdf',
};

export function guideRoutes(world: World, watches: Watches) {
  const { store } = world;
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/guides', responses: answers(z.array(guideShort), 'Guides, each with its counts') }),
      async context => {
        const guides = [];
        for (const kept of await store.guides.list()) guides.push(await describeGuideShort(kept, world));
        return context.json(guides, 200);
      },
    )
    .openapi(
      createRoute({ method: 'get', path: '/guides/{id}', request: { params }, responses: answers(guideFull, 'A guide as it was written') }),
      async context => context.json(describeGuide(await keptGuide(context.req.valid('param').id, world)), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/guides/{id}',
        request: { params, body: jsonBody(seen.extend({ guide: guideJson, published: publishedGuide.optional() })) },
        responses: answers(guideFull, 'The guide that was kept'),
      }),
      async context => {
        const { guide, version, published } = context.req.valid('json');
        const { id } = context.req.valid('param');
        return context.json(
          describeGuide(
            await store.guides.put(
              { ...guide, id },
              version,
              published === undefined ? {} : { published: { ...published, guide: namedGuide(published.guide, id) } },
            ),
          ),
          200,
        );
      },
    )
    .openapi(removalRoute('/guides/{id}', 'guide'), async context => {
      const { id } = context.req.valid('param');
      await store.guides.remove(id, context.req.valid('query').version);
      return context.json({ id }, 200);
    })
    .openapi(
      createRoute({
        method: 'post',
        path: '/guides/{id}/publish',
        request: { params, body: jsonBody(z.object({ version: z.number() })) },
        responses: answers(guideFull, 'The guide with the day and the labels of its publication'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        return context.json(describeGuide(await publishGuide(id, context.req.valid('json').version, world)), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/guides/{id}/files/{end}',
        request: { params: params.extend({ end: z.enum(guideFileEnds).openapi({ param: { name: 'end', in: 'path' } }) }) },
        responses: fileAnswer(
          'application/octet-stream',
          'One file of the guide: `html`, `large-print.html`, `fragment.html`, `csv`, cards (`svg`), PDFs',
        ),
      }),
      async context => {
        const { id, end } = context.req.valid('param');
        const made = guideFile((await keptGuideBuilt(id, world)).page, end);
        if (made === undefined)
          throw new Fault('not-found', 'The yardstick of this guide draws no line between energy and sodium, so there is no card.');
        const body = 'content' in made ? made.content : await world.pdfPrinter(context.req.raw.signal)(made.print);
        return fileBody(body, types[end.split('.').at(-1)!]!, {
          'content-disposition': `attachment; filename="${id.replace(/[^\w.-]/g, '_')}.${end}"`,
          'content-security-policy': pagePolicy,
        });
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/guide-site',
        request: {
          body: jsonBody(
            z.object({ siteUrl: z.string().max(2_000).optional(), pdf: z.boolean().default(false), workId: z.uuid().optional() }),
          ),
        },
        responses: fileAnswer('application/zip', 'Every published guide as a site for a static host'),
      }),
      async context => {
        const { siteUrl, pdf, workId } = context.req.valid('json');
        const printPdf = pdf ? world.pdfPrinter(context.req.raw.signal) : undefined;
        const published = (await store.guides.list()).filter(one => one.published !== undefined);
        if (published.length === 0) throw new Fault('guide-not-found', 'No guide has been published yet: open one and choose Publish.');
        const bytes = await watches.run(workId, context.req.raw.signal, async watch => {
          const guides = [];
          for (const kept of published) guides.push((await publishedBuilt(kept, world)).input);
          const { value: site } = await buildGuideSite({
            guides,
            watch,
            ...(siteUrl === undefined || siteUrl === '' ? {} : { siteUrl }),
            ...(printPdf === undefined ? {} : { printPdf }),
          });
          return world.zip(site);
        });
        return fileBody(bytes, 'application/zip');
      },
    );
}
