/** Every route of /api/openapi.json, asked with what its own description says and then with what it does not. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { testServer } from '../../../src/server/testWorld.fixture.ts';
import { Chance } from './chance.ts';
import { Known } from './known.ts';
import { type Asked, type Description, requestFor, routesOf } from './request.ts';
import { longestMs, within } from './within.ts';

export interface RouteFigures {
  readonly fivexx: number;
  readonly hangs: number;
  readonly slowest: { readonly ms: number; readonly what: string };
  readonly statuses: Readonly<Record<string, number>>;
  /** Times that the store or the vault held something unreadable, or a plain read did not answer, after a server's turn. */
  readonly unreadable: number;
  readonly examples: readonly unknown[];
}

type Server = Awaited<ReturnType<typeof testServer>>;
/** A server is looked through and replaced after so many requests: what got in must not hide what comes. */
const requestsAServer = 2_000;
/** With a passphrase on it the vault is soon locked for good. */
const requestsWithPassphrase = 40;

export async function fuzzRoutes(count: number, seed: number): Promise<RouteFigures> {
  const examples: unknown[] = [];
  const statuses: Record<string, number> = {};
  let [fivexx, hangs, unreadable] = [0, 0, 0];
  let slowest = { ms: 0, what: '' };
  for (let input = 0; input < count; ) {
    const server = await testServer();
    try {
      writeFileSync(join(server.folder, 'index.html'), '<!doctype html><title>Platewright</title>');
      const { body } = await server.call('GET', '/openapi.json');
      const description: Description = { routes: routesOf(body.paths), schemas: body.components.schemas };
      const archive = await server.archiveOf(true);
      const known = new Known();
      let left = Math.min(requestsAServer, count - input);
      for (; left > 0; left -= 1, input += 1) {
        if (server.vault.hasPassphrase()) left = Math.min(left, requestsWithPassphrase);
        const chance = new Chance(seed ^ 0x5eed, input);
        const asked = requestFor(chance, description, known, { archive, folder: server.folder });
        if (asked === undefined) continue;
        const logged = server.logged.length;
        const { status, ms, answer } = await within(ask(server, asked)).catch(error => ({
          status: 599,
          ms: Number.POSITIVE_INFINITY,
          answer: String(error),
        }));
        statuses[status] = (statuses[status] ?? 0) + 1;
        known.learn(asked.route, answer);
        if (ms > slowest.ms) slowest = { ms, what: `${asked.what}, request ${input}` };
        if (ms > longestMs) hangs += 1;
        if (status >= 500 || ms > longestMs) {
          if (status >= 500) fivexx += 1;
          examples.push({
            request: input,
            what: asked.what,
            status,
            ms: Math.round(ms),
            answer: answer.slice(0, 300),
            log: server.logged.slice(logged).join('\n').slice(0, 900),
          });
        }
        if (server.vault.waitMilliseconds() > longestMs / 2) left = 1;
      }
      const found = await damage(server);
      if (found.length > 0) {
        unreadable += 1;
        examples.push({ before: input, found });
      }
    } finally {
      await server.close();
    }
  }
  return { fivexx, hangs, slowest, statuses, unreadable, examples };
}

async function ask(server: Server, { address, init }: Asked): Promise<{ status: number; ms: number; answer: string }> {
  const start = performance.now();
  const response = await server.app.request(address, init);
  const isStream = response.headers.get('content-type')?.startsWith('text/event-stream') ?? false;
  if (isStream) await response.body?.cancel();
  const isJson = /json/.test(response.headers.get('content-type') ?? '');
  const bytes = isStream ? new ArrayBuffer() : await response.arrayBuffer();
  return { status: response.status, ms: performance.now() - start, answer: isJson ? Buffer.from(bytes).toString() : '' };
}

/** What a person would meet after all that: whether everything that is kept can be read. */
async function damage(server: Server): Promise<readonly unknown[]> {
  const found: unknown[] = [];
  for (const row of await server.store.damagedRows()) found.push(row);
  if (server.vault.state() === 'open') {
    const { damaged, index } = await server.vault.health();
    if (index !== 'whole' || Object.values(damaged).some(count => count > 0)) found.push({ vault: damaged, index });
  }
  const paths = [
    '/workspace',
    '/workspace/damaged',
    '/foods',
    '/plates',
    '/yardsticks',
    '/surveys',
    '/guides',
    '/handouts',
    '/imports',
    '/references',
    '/copies',
  ];
  const lists = server.vault.state() === 'open' ? [...paths, '/clients', '/clients/export', '/care-figures'] : paths;
  for (const path of lists) {
    const { status, body } = await server.call('GET', path);
    if (status !== 200) found.push({ path, status, body });
    const kind = /^\/(foods|clients|guides)$/.exec(path)?.[1];
    if (kind === undefined || status !== 200) continue;
    for (const { id } of body) {
      const one = await server.call('GET', `/${kind}/${encodeURIComponent(id)}`);
      if (one.status !== 200) found.push({ path: `/${kind}/${id}`, status: one.status, body: one.body });
    }
  }
  const archive = await server.call('POST', '/archives', { withClients: false });
  if (archive.status !== 200 || archive.body.damaged > 0) found.push({ path: '/archives', status: archive.status, body: archive.body });
  return found;
}
