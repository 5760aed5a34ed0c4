import { createRoute, z } from '@hono/zod-openapi';
import type { Previews } from '#app/previews.ts';
import { Fault } from '#core/errors.ts';
import type { ClientDoor } from '../clientDoor.ts';
import { lockEvents } from '../lockEvents.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { fileAnswer } from './answers.ts';
import { archiveFile } from './archives.ts';
import { photoResponse } from './foods.ts';
import { previewResponse } from './guidePreviews.ts';

const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });

/** What stands in a page as an address (a picture, a frame, a download, a stream of events): no JSON, so outside the browser's typed calls. */
export function addressRoutes(world: World, previews: Previews, clientPreviews: Previews, door: ClientDoor) {
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/photos/{id}', request: { params }, responses: fileAnswer('image/*', 'A photo of a label') }),
      context => photoResponse(context.req.valid('param').id, world),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/archives/{id}/file',
        request: { params },
        responses: fileAnswer('application/zip', 'The file of an archive that was made'),
      }),
      context => archiveFile(context.req.valid('param').id, world),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/guide-previews/{id}',
        request: { params },
        responses: fileAnswer('text/html', 'The page of a preview; the newest dozen are held in memory'),
      }),
      context => previewResponse(context.req.valid('param').id, previews),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/client-previews/{id}',
        request: { params },
        responses: fileAnswer('text/html', "The page of a client's handout while records are open; forgotten when they are locked"),
      }),
      context => {
        if (world.vault.state() !== 'open')
          throw new Fault('clients-locked', 'What was made for a client is not shown while records are locked.');
        return previewResponse(context.req.valid('param').id, clientPreviews);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/client-events',
        responses: fileAnswer('text/event-stream', 'How the lock is now, each change at once, and a beat in between; one stream a browser'),
      }),
      // Asked for its head alone, nobody would ever leave.
      ({ req }) => (req.method === 'HEAD' ? new Response(null) : lockEvents(door)),
    );
}
