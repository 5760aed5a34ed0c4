import { createRoute, z } from '@hono/zod-openapi';
import { type ImportRowLook, importEntry, lookAtImport, proposedMapping } from '#app/lookAtImport.ts';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { labelFieldKeys, labelFields } from '#core/label/labelFields.ts';
import { panelKeys, panelLine } from '#core/label/panelKeys.ts';
import { list } from '../bodies.ts';
import { importDone, importLook } from '../importBodies.ts';
import { newApi } from '../newApi.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../world.ts';
import { answers } from './answers.ts';

const file = z.custom<File>(given => given instanceof File, 'a file').openapi({ type: 'string', format: 'binary' });

/** A file as it is, pasted text among them: nothing of it is JSON that would be read at once. The mapping, where the person has chosen one. */
const importFile = z
  .object({
    file,
    /** For each heading the column it is taken for; empty leaves it out. */
    mapping: z.union([z.string(), z.array(z.string())]).optional(),
    /** An identity of the caller's making, under which `/progress/{id}` tells how far the work is. */
    workId: z.uuid().optional(),
  })
  .openapi('ImportFile');
const importBody = { content: { 'multipart/form-data': { schema: importFile } }, required: true } as const;
const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });

/** Bytes of a file. */
const largestImport = 50 * 2 ** 20;

/** What a column may be taken for. */
const columns = [
  ...labelFieldKeys.map(key => ({ key, name: labelFields[key].title })),
  ...panelKeys.map(key => ({ key, name: `${panelLine(key).title} (${panelLine(key).unit})` })),
];

export function importRoutes(world: World, watches: Watches) {
  const { store, shelf } = world;
  async function tableOf({ file }: z.output<typeof importFile>, watch: Watch) {
    if (file.size > largestImport) throw new Fault('request-too-large', 'The file is larger than 50 MB.');
    return world.readTable(new Uint8Array(await file.arrayBuffer()), watch);
  }
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/imports/look',
        request: { body: importBody },
        responses: answers(
          importLook,
          'What a file (CSV or XLSX) or pasted text holds: headings, proposed mapping, what its rows would do; nothing is kept',
        ),
      }),
      async context => {
        const given = context.req.valid('form');
        return watches.run(given.workId, context.req.raw.signal, async watch => {
          const table = await tableOf(given, watch);
          const mapping = mappingOf(given) ?? proposedMapping(table.headings);
          const sample = table.rows.slice(0, 5).map(({ row, cells }) => ({ row, cells: [...cells] }));
          const head = { fileName: nameOf(given), headings: [...table.headings], mapping: [...mapping], columns, sample };
          try {
            const { rows, report } = await lookAtImport(table, mapping, shelf, store, watch);
            return context.json({ ...head, rows: rows.map(shown), report }, 200);
          } catch (error) {
            // A mapping that is not complete yet is no failure of the look: it says what is missing.
            if (!(error instanceof Fault) || !error.code.startsWith('table-')) throw error;
            return context.json(
              { ...head, rows: [], report: [{ code: error.code, place: {}, found: error.message, expected: error.nextStep }] },
              200,
            );
          }
        });
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/imports',
        request: { body: importBody },
        responses: answers(importDone, 'The good rows were kept, all or none: the report and the id of the import'),
      }),
      async context => {
        const given = context.req.valid('form');
        return watches.run(given.workId, context.req.raw.signal, async watch => {
          const table = await tableOf(given, watch);
          const mapping = mappingOf(given) ?? proposedMapping(table.headings);
          const look = await lookAtImport(table, mapping, shelf, store, watch);
          const { importId, added, joined } = await store.applyImport(importEntry(look, nameOf(given)), watch);
          const alreadyThere = look.rows.filter(({ does }) => does === 'already-there').length;
          return context.json({ importId, added, joined, alreadyThere, leftOut: look.leftOut, report: look.report }, 200);
        });
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/progress/{id}',
        request: { params },
        responses: answers(
          z.object({ what: z.string(), done: z.number(), of: z.number() }).nullable(),
          'How far work is that was asked for with this workId; null before it begins and after its end. Ending its request stops it',
        ),
      }),
      context => context.json(watches.progressOf(context.req.valid('param').id) ?? null, 200),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/imports',
        responses: answers(
          list(
            z.object({
              id: z.string(),
              fileName: z.string(),
              at: z.string(),
              added: z.number(),
              joined: z.number(),
              undoneAt: z.string().exactOptional(),
            }),
          ),
          'Earlier imports, newest first',
        ),
      }),
      async context => context.json(await store.listImports(), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/imports/{id}/undo',
        request: { params },
        responses: answers(z.object({ withdrawn: z.number() }), 'How many labels the import had added that are withdrawn now'),
      }),
      async context => context.json(await store.undoImport(context.req.valid('param').id), 200),
    );
}

/** What the browser's own list of chosen files would be called; a path or more than a name is cut. */
function nameOf({ file }: z.output<typeof importFile>): string {
  return (file.name.split(/[\\/]/).at(-1) ?? '').slice(0, 300);
}

function mappingOf({ mapping }: z.output<typeof importFile>): readonly (string | null)[] | undefined {
  return mapping === undefined ? undefined : [mapping].flat().map(key => key || null);
}

function shown({ row, printed: { name = '', maker }, does, joins }: ImportRowLook) {
  return { row, name, does, ...(maker === undefined ? {} : { maker }), ...(joins === undefined ? {} : { joins: joins.name }) };
}
