import { serve as listen } from '@hono/node-server';
import { Fault } from '#core/errors.ts';

/** `env`: Node's own request and answer. */
type Fetch = (request: Request, env: object) => Response | Promise<Response>;

/** The port, taken before anything else is touched: who comes meanwhile waits. */
export interface Door {
  /** http://127.0.0.1:PORT */
  readonly origin: string;
  readonly answerWith: (fetch: Fetch) => void;
  /** Whoever is connected is cut off. */
  readonly close: () => Promise<void>;
}

/** @throws Fault port-in-use */
export function openDoor(port: number): Promise<Door> {
  let answerWith: (fetch: Fetch) => void = () => undefined;
  const answering = new Promise<Fetch>(done => {
    answerWith = done;
  });
  return new Promise((done, failed) => {
    const server = listen({ fetch: async (request, env) => (await answering)(request, env), port, hostname: '127.0.0.1' }, info => {
      done({
        origin: `http://127.0.0.1:${info.port}`,
        answerWith,
        close: () =>
          new Promise(closed => {
            server.close(() => closed());
            if ('closeAllConnections' in server) server.closeAllConnections();
          }),
      });
    });
    server.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') failed(new Fault('port-in-use', `Another program listens on port ${port}.`));
      else if (error.code === 'EACCES') failed(new Fault('port-in-use', `Port ${port} is kept for the system.`));
      else failed(error);
    });
  });
}

/** 4173 where nothing is given, any free one for 0. @throws Fault port-not-valid */
export function portOf(given: string | undefined): number {
  if (given === undefined || given === '') return 4173;
  const port = Number(given);
  if (!/^\d{1,5}$/.test(given) || port > 65_535) throw new Fault('port-not-valid', `PORT is ${JSON.stringify(given)}.`);
  return port;
}
