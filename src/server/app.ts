import { OpenAPIHono } from '@hono/zod-openapi';
import { bodyLimit } from 'hono/body-limit';
import { Previews } from '#app/previews.ts';
import { Fault } from '#core/errors.ts';
import { ClientDoor } from './clientDoor.ts';
import { entry } from './entry.ts';
import { ErasedClients } from './erasedClients.ts';
import { answerHeaders, guard } from './guard.ts';
import { problem } from './problem.ts';
import { addressRoutes } from './routes/addresses.ts';
import { archiveRoutes } from './routes/archives.ts';
import { careFigureRoutes } from './routes/careFigures.ts';
import { clientDraftRoutes } from './routes/clientDrafts.ts';
import { clientFileRoutes } from './routes/clientFile.ts';
import { clientHandoutRoutes } from './routes/clientHandouts.ts';
import { clientLockRoutes } from './routes/clientLock.ts';
import { clientNoteRoutes } from './routes/clientNotes.ts';
import { clientPaperRoutes } from './routes/clientPapers.ts';
import { clientRoutes } from './routes/clients.ts';
import { foodRoutes } from './routes/foods.ts';
import { formulaRoutes } from './routes/formulas.ts';
import { guidePreviewRoutes } from './routes/guidePreviews.ts';
import { guideRoutes } from './routes/guides.ts';
import { handoutRoutes } from './routes/handouts.ts';
import { importRoutes } from './routes/imports.ts';
import { keptDraftRoutes } from './routes/keptDrafts.ts';
import { plateRoutes } from './routes/plates.ts';
import { referenceRoutes } from './routes/references.ts';
import { savedSurveyRoutes } from './routes/savedSurveys.ts';
import { surveyRoutes } from './routes/survey.ts';
import { workspaceRoutes } from './routes/workspace.ts';
import { yardstickRoutes } from './routes/yardsticks.ts';
import { tellBrowserPart } from './servedPart.ts';
import { streamedForm } from './streamedForm.ts';
import { Watches } from './watches.ts';
import type { World } from './world.ts';

/** Largest file; a table of labels may have 50 MB of it. */
const largestFile = 70 * 2 ** 20;
/** Largest JSON: what was typed, or the text of laboratory results. It is read at once, while everybody waits. */
const largestJson = 6 * 2 ** 20;
const takesFiles = /^\/api\/(imports|references|labels\/[^/]+\/photos)(\/|$)/;

/** The whole server without a port: `app.request('/api/workspace')` answers in a test as it does to the browser. */
export function createApp(world: World) {
  const app = new OpenAPIHono();
  app.onError((error, context) => problem(error, context, world.log));
  app.notFound(context => problem(new Fault('not-found', 'There is nothing at this address.'), context, world.log));
  app.use(answerHeaders, guard, entry(world.secret));
  app.use('/api/*', tellBrowserPart(world.browserPart));
  const limitJson = bodyLimit({
    maxSize: largestJson,
    onError: () => {
      throw new Fault('request-too-large', 'The request is larger than 6 MB.');
    },
  });
  const limitFiles = bodyLimit({
    maxSize: largestFile,
    onError: ({ req }) => {
      const isReference = req.path === '/api/references';
      throw new Fault(
        'request-too-large',
        isReference
          ? 'The files are larger than 70 MB together. `platewright reference import` reads them at any size and writes a reference file that fits here.'
          : 'The file is larger than 50 MB.',
      );
    },
  });
  // An archive comes in as a stream onto the disk: it has no limit of size.
  app.use((context, next) => {
    const { path } = context.req;
    if (path === '/api/archives/brought') return next();
    return takesFiles.test(path) ? limitFiles(context, next) : limitJson(context, next);
  });
  app.use((context, next) => (takesFiles.test(context.req.path) ? streamedForm(context, next) : next()));
  const watches = new Watches();
  const previews = new Previews(world.newId);
  // Apart, since a locked workbench must not show them.
  const clientPreviews = new Previews(world.newId);
  const erased = new ErasedClients(world.now);
  const door = new ClientDoor(world.vault, () => {
    clientPreviews.forget();
    erased.forget();
  });
  // Also where a timer slept with the computer: what comes too late finds the door locked.
  app.use('/api/*', async (_, next) => {
    door.lockWhenIdle();
    await next();
  });
  const api = app
    .route('/api', workspaceRoutes(world))
    .route('/api', archiveRoutes(world, watches))
    .route('/api', foodRoutes(world))
    .route('/api', importRoutes(world, watches))
    .route('/api', referenceRoutes(world, watches))
    .route('/api', plateRoutes(world))
    .route('/api', yardstickRoutes(world))
    .route('/api', savedSurveyRoutes(world))
    .route('/api', surveyRoutes(world))
    .route('/api', formulaRoutes(world))
    // Before the routes with an id in the address: "lock" is none.
    .route('/api', clientLockRoutes(world, door))
    .route('/api', clientFileRoutes(world, clientPreviews, erased))
    .route('/api', clientDraftRoutes(world))
    .route('/api', keptDraftRoutes(world))
    .route('/api', careFigureRoutes(world))
    .route('/api', clientRoutes(world))
    .route('/api', clientPaperRoutes(world))
    .route('/api', clientNoteRoutes(world))
    .route('/api', guideRoutes(world, watches))
    .route('/api', guidePreviewRoutes(world, previews))
    .route('/api', handoutRoutes(world, previews))
    .route('/api', clientHandoutRoutes(world, clientPreviews));
  // Apart from `api`: the browser follows their addresses and calls none of them.
  app.route('/api', addressRoutes(world, previews, clientPreviews, door));
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: { title: 'Platewright', version: '0.1.0', description: 'The workbench on this machine. Nothing is sent elsewhere.' },
  });
  app.all('/api/*', () => {
    throw new Fault('not-found', 'There is no such call.');
  });
  return api;
}

export type AppType = ReturnType<typeof createApp>;
