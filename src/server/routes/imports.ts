import { createRoute, z } from '@hono/zod-openapi';
import { importEntry, lookAtImport, proposedMapping } from '#app/lookAtImport.ts';
import { Fault } from '#core/errors.ts';
import { labelFieldKeys, labelFields } from '#core/label/labelFields.ts';
import { panelKeys, panelLine } from '#core/label/panelKeys.ts';
import { list } from '../bodies.ts';
import { importDone, importLook } from '../importBodies.ts';
import { newApi } from '../newApi.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

/** A file as base64 or pasted text; the mapping, where the person has chosen one. */
const importFile = z
  .object({
    fileName: z.string().max(300),
    base64: z.base64().optional(),
    text: z.string().optional(),
    mapping: z.array(z.string().nullable()).optional(),
    /** An identity of the caller's making, under which `/progress/{id}` tells how far the work is. */
    workId: z.uuid().optional(),
  })
  .openapi('ImportFile');
const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });

/** What a column may be taken for. */
const columns = [
  ...labelFieldKeys.map(key => ({ key, name: labelFields[key].title })),
  ...panelKeys.map(key => ({ key, name: `${panelLine(key).title} (${panelLine(key).unit})` })),
];

export function importRoutes(world: World, watches: Watches) {
  const { store, shelf } = world;
  async function tableOf({ base64, text }: z.output<typeof importFile>) {
    const bytes =
      text !== undefined
        ? new TextEncoder().encode(text)
        : base64 !== undefined
          ? new Uint8Array(Buffer.from(base64, 'base64'))
          : undefined;
    if (bytes === undefined || bytes.length === 0) throw new Fault('table-without-headings', 'The file is empty.');
    return world.readTable(bytes);
  }
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/imports/look',
        request: { body: jsonBody(importFile) },
        responses: answers(importLook, 'What the file holds and what its rows would do'),
      }),
      async context => {
        const given = context.req.valid('json');
        const table = await tableOf(given);
        const mapping = given.mapping ?? proposedMapping(table.headings);
        const sample = table.rows.slice(0, 5).map(({ row, cells }) => ({ row, cells: [...cells] }));
        const head = { fileName: given.fileName, headings: [...table.headings], mapping: [...mapping], columns, sample };
        try {
          const look = await watches.run(given.workId, context.req.raw.signal, watch => lookAtImport(table, mapping, shelf, store, watch));
          const rows = look.rows.map(({ imported: { row, label }, does, joins }) => ({
            row,
            name: label.printed.name ?? '',
            ...(label.printed.maker === undefined ? {} : { maker: label.printed.maker }),
            does,
            ...(joins === undefined ? {} : { joins: joins.name }),
          }));
          return context.json({ ...head, rows, report: look.report }, 200);
        } catch (error) {
          // A mapping that is not complete yet is no failure of the look: it says what is missing.
          if (!(error instanceof Fault) || !error.code.startsWith('table-')) throw error;
          return context.json(
            { ...head, rows: [], report: [{ code: error.code, place: {}, found: error.message, expected: error.nextStep }] },
            200,
          );
        }
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/imports',
        request: { body: jsonBody(importFile) },
        responses: answers(importDone, 'What was kept'),
      }),
      async context => {
        const given = context.req.valid('json');
        const table = await tableOf(given);
        const mapping = given.mapping ?? proposedMapping(table.headings);
        const { look, importId, added, joined } = await watches.run(given.workId, context.req.raw.signal, async watch => {
          const look = await lookAtImport(table, mapping, shelf, store, watch);
          return { look, ...(await store.applyImport(importEntry(look, given.fileName), watch)) };
        });
        const alreadyThere = look.rows.filter(({ does }) => does === 'already-there').length;
        return context.json({ importId, added, joined, alreadyThere, leftOut: look.leftOut, report: look.report }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/progress/{id}',
        request: { params },
        responses: answers(
          z.object({ what: z.string(), done: z.number(), of: z.number() }).nullable(),
          'How far long work is; null before it begins and after its end',
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
        responses: answers(z.object({ withdrawn: z.number() }), 'How many labels were withdrawn'),
      }),
      async context => context.json(await store.undoImport(context.req.valid('param').id), 200),
    );
}
