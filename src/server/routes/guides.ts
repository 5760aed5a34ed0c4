import { createRoute, z } from '@hono/zod-openapi';
import { localDay } from '#app/clients/localDay.ts';
import { buildGuideSite } from '#app/guides/buildGuideSite.ts';
import { builtGuide, keptGuide, keptGuideBuilt, publishedBuilt } from '#app/guides/builtGuide.ts';
import { guideFile, guideFileEnds } from '#app/guides/guideFiles.ts';
import { labelsToPublish } from '#app/guides/guideFromShelf.ts';
import type { GuideFile, KeptGuide } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { isSameJson } from '#core/json/isSameJson.ts';
import type { UnreadJson } from '../edge.ts';
import { guideFull, guideJson, guideShort, publishedGuide } from '../guideBodies.ts';
import { newApi } from '../newApi.ts';
import { pagePolicy } from '../pagePolicy.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../workbench.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';

const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });
const seen = z.object({ version: z.number().nullable() });
const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
};

function full({ value, version, isDemo, published }: KeptGuide) {
  const isChanged = published !== undefined && !isSameJson(value, published.guide);
  return {
    guide: value,
    version,
    isDemo,
    isPublished: published !== undefined,
    isChanged,
    ...(published === undefined ? {} : { published }),
  };
}

/** What was published keeps its own name, which a copy of the guide does not share. */
function named(json: UnreadJson, id: string): GuideFile {
  return { ...json, id: typed(json, 'id') ?? id };
}

function typed(json: Readonly<Record<string, unknown>>, key: string): string | undefined {
  const value = json[key];
  return typeof value === 'string' && value !== '' ? value : undefined;
}

export function guideRoutes(world: World, watches: Watches) {
  const { store } = world;
  /** One line of the list. A guide whose plate or yardstick is gone is listed too: its screen says what to do. */
  const short = async (kept: KeptGuide): Promise<z.input<typeof guideShort>> => {
    const { value, version, isDemo, published } = kept;
    const built = await builtGuide(value, published, world).catch(error => {
      if (error instanceof Fault) return { issues: [error], page: undefined };
      throw error;
    });
    const survey = value.survey as Readonly<Record<string, unknown>> | undefined;
    const publishedOn = typed(value, 'publishedOn');
    return {
      id: value.id,
      version,
      isDemo,
      title: typed(value, 'title') ?? 'A guide without a title',
      category: (survey === undefined ? undefined : typed(survey, 'category')) ?? '',
      ...(publishedOn === undefined ? {} : { publishedOn }),
      isPublished: published !== undefined,
      ...(built.page === undefined ? {} : { counts: built.page.counts }),
      takenOff: built.page?.takenOff.length ?? 0,
      toMend: built.issues.length,
    };
  };
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/guides', responses: answers(z.array(guideShort), 'Guides, each with its counts') }),
      async context => {
        const guides = [];
        for (const kept of await store.guides.list()) guides.push(await short(kept));
        return context.json(guides, 200);
      },
    )
    .openapi(
      createRoute({ method: 'get', path: '/guides/{id}', request: { params }, responses: answers(guideFull, 'A guide as it was written') }),
      async context => context.json(full(await keptGuide(context.req.valid('param').id, world)), 200),
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
          full(
            await store.guides.put(
              { ...guide, id },
              version,
              published === undefined ? {} : { published: { ...published, guide: named(published.guide, id) } },
            ),
          ),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/guides/{id}',
        request: { params, query: z.object({ version: z.coerce.number() }) },
        responses: answers(z.object({ id: z.string() }), 'The guide that was removed'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        await store.guides.remove(id, context.req.valid('query').version);
        return context.json({ id }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/guides/{id}/publish',
        request: { params, body: jsonBody(z.object({ version: z.number() })) },
        responses: answers(guideFull, 'The guide with the day and the labels of its publication'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        // A guide that is not finished cannot be published.
        const { kept, input } = await keptGuideBuilt(id, world);
        const guide: GuideFile = { ...kept.value, publishedOn: localDay(world.now()) };
        const labels = labelsToPublish(await world.shelf.foods(input.draft.survey.category));
        return context.json(full(await store.guides.put(guide, context.req.valid('json').version, { published: { guide, labels } })), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/guides/{id}/files/{end}',
        request: { params: params.extend({ end: z.enum(guideFileEnds).openapi({ param: { name: 'end', in: 'path' } }) }) },
        responses: fileAnswer('application/octet-stream', 'A file of the guide'),
      }),
      async context => {
        const { id, end } = context.req.valid('param');
        const made = guideFile((await keptGuideBuilt(id, world)).page, end);
        if (made === undefined)
          throw new Fault('not-found', 'The yardstick of this guide draws no line between energy and sodium, so there is no card.');
        const body = 'content' in made ? made.content : await world.pdfPrinter()(made.print);
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
        const printPdf = pdf ? world.pdfPrinter() : undefined;
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
