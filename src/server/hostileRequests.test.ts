import { once } from 'node:events';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDoor } from './door.ts';
import { testServer } from './testWorld.fixture.ts';

interface Schema {
  readonly properties?: Readonly<Record<string, unknown>>;
  readonly $ref?: string;
}
interface Operation {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
}

let server: Awaited<ReturnType<typeof testServer>>;
let routes: readonly {
  readonly method: string;
  readonly path: string;
  readonly keys: readonly string[];
  readonly queries: readonly string[];
}[];
beforeAll(async () => {
  server = await testServer();
  const { body } = await server.call('GET', '/openapi.json');
  const schemas: Readonly<Record<string, Schema>> = body.components.schemas;
  const paths: Readonly<Record<string, Readonly<Record<string, Operation>>>> = body.paths;
  routes = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { parameters = [], requestBody }]) => {
      const schema = requestBody?.content['application/json']?.schema;
      const { properties = {} } = (schema?.$ref === undefined ? schema : schemas[schema.$ref.split('/').at(-1)!]) ?? {};
      const queries = parameters.filter(one => one.in === 'query').map(({ name }) => name);
      return { method: method.toUpperCase(), path, keys: Object.keys(properties), queries };
    }),
  );
});
afterAll(() => server.close());

const id = '00000000-0000-4000-8000-000000000000';
const levels = 100_000;
const deep = { lists: `${'['.repeat(levels)}${']'.repeat(levels)}`, objects: `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}` };

async function status(method: string, path: string, body?: string, headers: Record<string, string> = {}): Promise<number> {
  const answer = await server.app.request(`http://127.0.0.1:4173${path}`, {
    method,
    headers: { host: '127.0.0.1:4173', 'content-type': 'application/json', ...headers },
    ...(body !== undefined && method !== 'GET' && { body }),
  });
  // A stream of events has no end.
  if (answer.headers.get('content-type') === 'text/event-stream') await answer.body?.cancel();
  else await answer.arrayBuffer();
  return answer.status;
}

/** Empties what the other cases ask about. */
const isLeftOut = (path: string, method: string): boolean => method === 'DELETE' && !path.includes('{');

describe('what no person types', () => {
  test('[SRV-20] JSON of 100,000 levels, as the body, in each of its places, in an address, in a header', {
    timeout: 120_000,
  }, async () => {
    let asked = 0;
    for (const { method, path, keys } of routes.filter(one => one.method !== 'GET' && !isLeftOut(one.path, one.method))) {
      const bodies = keys.flatMap(key => [`{"version":1,"${key}":${deep.lists}}`, `{"version":1,"${key}":[{"a":${deep.objects}}]}`]);
      for (const body of [deep.lists, deep.objects, ...bodies]) {
        const found = await status(method, path.replaceAll(/\{\w+\}/g, id), body);
        expect([method, path, body.slice(0, 40), found < 500]).toEqual([method, path, body.slice(0, 40), true]);
        asked += 1;
      }
    }
    expect(asked).toBeGreaterThan(150);
    for (const { method, path, queries } of routes.filter(one => one.queries.length > 0)) {
      for (const query of queries)
        expect(await status(method, `${path.replaceAll(/\{\w+\}/g, id)}?${query}=${'%5B'.repeat(2_000)}`), path).toBeLessThan(500);
    }
    expect(server.logged.filter(line => line.startsWith('fault'))).toEqual([]);
  });

  test('[SRV-20] a NUL in the path, in the query, in every text of a body', { timeout: 120_000 }, async () => {
    const nul = 'a\0b';
    for (const { method, path, keys, queries } of routes.filter(one => !isLeftOut(one.path, one.method))) {
      const address = path.replaceAll(/\{\w+\}/g, encodeURIComponent(nul));
      const query = queries.map(name => `${name}=a%00b`).join('&');
      const bodies = keys.flatMap(key =>
        [nul, [nul], { [nul]: nul, name: nul, title: nul }].map(value => JSON.stringify({ version: 1, [key]: value })),
      );
      for (const body of bodies.length === 0 ? [undefined] : bodies) {
        expect([method, path, body, (await status(method, `${address}?${query}`, body)) < 500]).toEqual([method, path, body, true]);
      }
    }
    for (const path of ['/%00', '/a%00b.js', '/assets/%00', '/foods/%00']) expect([path, await status('GET', path)]).toEqual([path, 422]);
    expect(server.logged.filter(line => line.startsWith('fault'))).toEqual([]);
  });

  test('[SRV-20] over the wire: a NUL in a path, a header’s name or value is a bad request, and the next one is answered', async () => {
    const door = await openDoor(0);
    door.answerWith(server.outside.fetch);
    const { port, host } = new URL(door.origin);
    const asked = async (text: string): Promise<string> => {
      const socket = connect(Number(port), '127.0.0.1');
      socket.write(text);
      const [answer] = await once(socket, 'data');
      socket.destroy();
      return String(answer).split('\r\n')[0]!;
    };
    for (const text of [
      `GET /a\0b HTTP/1.1\r\nHost: ${host}\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: ${host}\r\nCookie: a\0b\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: ${host}\r\nA\0B: c\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: ${host}\0\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: a b\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: [\r\n\r\n`,
      `GET http://[/ HTTP/1.1\r\nHost: ${host}\r\n\r\n`,
      `GET //[ HTTP/1.1\r\nHost: ${host}\r\n\r\n`,
      `OPTIONS * HTTP/1.1\r\nHost: ${host}\r\n\r\n`,
      `GET / HTTP/1.1\r\nHost: ${host}\r\nX: ${'a'.repeat(20_000)}\r\n\r\n`,
    ]) {
      expect([text.slice(0, 60), await asked(text)]).toEqual([text.slice(0, 60), expect.stringMatching(/^HTTP\/1\.1 4\d\d /)]);
    }
    expect(await asked(`GET / HTTP/1.1\r\nHost: ${host}\r\n\r\n`)).toBe('HTTP/1.1 403 Forbidden');
    await door.close();
  });
});
