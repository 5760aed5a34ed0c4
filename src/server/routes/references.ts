import { createRoute, z } from '@hono/zod-openapi';
import { importReference } from '#app/importReference.ts';
import type { DatasetFile } from '#app/ports.ts';
import type { ReferenceRow } from '#app/store.ts';
import { issues, list } from '../bodies.ts';
import { referenceBody } from '../importBodies.ts';
import { newApi } from '../newApi.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../world.ts';
import { answers } from './answers.ts';

const file = z.custom<File>(given => given instanceof File, 'a file').openapi({ type: 'string', format: 'binary' });

/** The files of one dataset, as they lie in its folder. */
const referenceFiles = z
  .object({
    files: z.union([file, z.array(file)]),
    /** As in an import of labels. */
    workId: z.uuid().optional(),
  })
  .openapi('ReferenceFiles');

const params = z.object({ dataset: z.string().openapi({ param: { name: 'dataset', in: 'path' } }) });
const tables = list(referenceBody);

function shown({ dataset, source, edition, foods, importedAt }: ReferenceRow): z.infer<typeof referenceBody> {
  return { dataset, source, edition, foods, importedAt };
}

/** Imported composition tables: kept, listed, removed. */
export function referenceRoutes({ store, readDatasets, log }: World, watches: Watches) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/references', responses: answers(tables, 'The imported composition tables') }),
      async context => context.json((await store.listReferences()).map(shown), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/references',
        request: { body: { content: { 'multipart/form-data': { schema: referenceFiles } }, required: true } },
        responses: answers(
          z.object({ kept: tables, report: issues }),
          'What was kept of the files of one dataset, 70 MB at most, and what was noticed',
        ),
      }),
      async context => {
        const { files, workId } = context.req.valid('form');
        const given = (Array.isArray(files) ? files : [files]).map(datasetFile);
        const { kept, report } = await watches.run(workId, context.req.raw.signal, watch =>
          importReference(given, readDatasets, store, watch),
        );
        return context.json({ kept: kept.map(shown), report }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/references/{dataset}',
        request: { params },
        responses: answers(tables, 'The tables that are left'),
      }),
      async context => {
        await store.removeReference(context.req.valid('param').dataset);
        return context.json((await store.listReferences()).map(shown), 200);
      },
    );
}

function datasetFile(file: File): DatasetFile {
  return {
    name: file.name.split(/[\\/]/).at(-1) ?? file.name,
    bytes: file.size,
    open: () => pieces(file),
  };
}

/** What a file holds, piece by piece: the browser's stream is read by hand, since its type does not say that it can be walked over. */
async function* pieces(file: File): AsyncIterable<Uint8Array> {
  const reader = file.stream().getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel();
  }
}
