import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

/**
 * Every route of /api/openapi.json is asked wrongly, in ways made from its own description: a new route is asked too without a line here.
 */

interface Schema {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly $ref?: string;
  readonly items?: Schema;
}
interface Operation {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
}
interface Route {
  readonly method: string;
  readonly path: string;
  readonly operation: Operation;
}

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
let routes: readonly Route[];
let schemas: Readonly<Record<string, Schema>>;
beforeAll(async () => {
  server = await testServer();
  const { body } = await server.call('GET', '/openapi.json');
  schemas = body.components.schemas;
  const paths: Readonly<Record<string, Readonly<Record<string, Operation>>>> = body.paths;
  routes = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ method: method.toUpperCase(), path: path.replace(/^\/api/, ''), operation })),
  );
});
afterAll(() => server.close());

const filled = (path: string, value: string): string => path.replace(/\{[^}]+\}/g, value);
const jsonSchema = ({ operation }: Route): Schema | undefined => {
  const schema = operation.requestBody?.content['application/json']?.schema;
  return schema?.$ref === undefined ? schema : schemas[schema.$ref.split('/').at(-1)!];
};
/** What must not be run for fun: it empties what the other cases ask about, or prints with a browser. */
const isLeftOut = ({ path }: Route): boolean => /paper|guide-site|files\/\{end\}/.test(path);

async function ask(route: Route, path: string, body?: unknown): Promise<{ status: number; isProblem: boolean; what: string }> {
  const init = body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) };
  const response = await server.app.request(`http://127.0.0.1:4173/api${path}`, {
    method: route.method,
    headers: { host: '127.0.0.1:4173', 'content-type': 'application/json' },
    ...init,
  });
  const type = response.headers.get('content-type') ?? '';
  const what = `${route.method} ${path} ${JSON.stringify(body)?.slice(0, 200) ?? ''} → ${response.status}`;
  await response.arrayBuffer();
  return { status: response.status, isProblem: type.startsWith('application/problem+json'), what };
}

const resolved = (schema: Schema): Schema => (schema.$ref === undefined ? schema : (schemas[schema.$ref.split('/').at(-1)!] ?? {}));

/** A value of another type than the schema's. */
function wrongFor(schema: Schema): unknown {
  const { type } = resolved(schema);
  return type === 'array' || type === 'object' ? 'a text' : { an: 'object' };
}

/** By hand: the value is deeper than JSON.stringify can go. */
function writtenDeep(value: unknown): string {
  let [before, after] = ['', ''];
  for (let at = value; typeof at === 'object' && at !== null; ) {
    const isList = Array.isArray(at);
    before += isList ? '[' : '{"deep":';
    after = (isList ? ']' : '}') + after;
    at = Object.values(at)[0];
  }
  return `${before}"the end"${after}`;
}

/** Values that are wrong somewhere inside: each part of each part, by itself. */
function wrongInside(schema: Schema, depth: number): readonly unknown[] {
  const { properties = {}, items } = resolved(schema);
  if (depth === 0) return [wrongFor(schema)];
  const inParts = Object.entries(properties).flatMap(([key, part]) => wrongInside(part, depth - 1).map(wrong => ({ [key]: wrong })));
  return [wrongFor(schema), ...inParts, ...(items === undefined ? [] : wrongInside(items, depth - 1).map(wrong => [wrong]))];
}

describe('requests of a wrong shape', () => {
  test('[SRV-20] the description names every route that this asks', () => {
    expect(routes.length).toBeGreaterThan(50);
    expect(routes.filter(route => jsonSchema(route) !== undefined).length).toBeGreaterThan(20);
  });

  test('[SRV-20] a body of another kind, or none at all, is a problem of the caller, never of the program', async () => {
    for (const route of routes) {
      if (jsonSchema(route) === undefined) continue;
      for (const body of [undefined, 'no JSON {', null, 7, '"text"', [], [{}]]) {
        const { status, isProblem, what } = await ask(route, filled(route.path, '00000000-0000-4000-8000-000000000000'), body);
        expect([status >= 400 && status < 500, isProblem], what).toEqual([true, true]);
      }
    }
  });

  test('[SRV-20] nor is one whose parts are each of a wrong type', async () => {
    for (const route of routes.filter(one => !isLeftOut(one))) {
      for (const [key, part] of Object.entries(jsonSchema(route)?.properties ?? {})) {
        const { status, isProblem, what } = await ask(route, filled(route.path, '00000000-0000-4000-8000-000000000000'), {
          [key]: wrongFor(part),
        });
        expect([status >= 400 && status < 500, isProblem], what).toEqual([true, true]);
      }
    }
  });

  test('[SRV-20] nor is one that is wrong deep inside: a label in a plate, a result in an assessment', async () => {
    let asked = 0;
    for (const route of routes.filter(one => !isLeftOut(one) && jsonSchema(one) !== undefined && one.path !== '/workspace')) {
      for (const body of wrongInside(jsonSchema(route)!, 4)) {
        const { status, what } = await ask(route, filled(route.path, '00000000-0000-4000-8000-000000000000'), body);
        expect(status, what).toBeLessThan(500);
        asked += 1;
      }
    }
    expect(asked).toBeGreaterThan(500);
  });

  test('[SRV-20] JSON nested thousands of levels deep is refused', async () => {
    let deep: unknown = 'the end';
    for (let level = 0; level < 20_000; level++) deep = level % 2 === 0 ? [deep] : { deep };
    const text = writtenDeep(deep);
    for (const route of routes.filter(one => !isLeftOut(one) && jsonSchema(one) !== undefined && one.path !== '/workspace')) {
      for (const key of Object.keys(jsonSchema(route)?.properties ?? {})) {
        const { status, what } = await ask(
          route,
          filled(route.path, '00000000-0000-4000-8000-000000000000'),
          `{"version":1,"${key}":{"title":${text}}}`,
        );
        expect(status, what).toBeLessThan(500);
      }
    }
  });

  test('[SRV-20] what could not be read again is not written: a client whose handout names a prototype stays readable', async () => {
    const [{ id, version }] = (await server.call('GET', '/clients')).body;
    const odd = `{"version":${version},"handout":{"__proto__":{"x":1}}}`;
    const { status } = await server.call('PUT', `/clients/${id}/handout`, odd);
    expect(status).toBeLessThan(500);
    expect((await server.call('GET', `/clients/${id}`)).status).toBe(200);
    expect((await server.call('GET', '/clients/export')).status).toBe(200);
  });

  test('[SRV-20] odd names in the address are not found or refused', async () => {
    const odd = ['%E0%A4%A', '%00', '..%2F..%2Fetc%2Fpasswd', '%F0%9F%A5%95', 'a'.repeat(3_000), '__proto__', "x'; drop table foods; --"];
    for (const route of routes.filter(one => one.path.includes('{') && !isLeftOut(one))) {
      for (const name of odd) {
        const { status, what } = await ask(route, filled(route.path, name), jsonSchema(route) === undefined ? undefined : {});
        expect(status, what).toBeLessThan(500);
      }
    }
  });

  test('[SRV-20] a page whose address cannot be read is refused as well', async () => {
    for (const path of ['/%E0%A4%A', '/%', '/assets/%c0%af.js', '/foods/%E0%A4%A']) {
      const response = await server.app.request(`http://127.0.0.1:4173${path}`, { headers: { host: '127.0.0.1:4173' } });
      expect([path, response.status >= 400 && response.status < 500]).toEqual([path, true]);
    }
  });

  test('[SRV-20] nothing that JSON can say makes the program fail', async () => {
    const asked = routes.filter(route => jsonSchema(route) !== undefined && !isLeftOut(route) && route.path !== '/workspace');
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...asked.keys()), fc.json({ maxDepth: 3 }), fc.object({ maxDepth: 2 }), async (at, text, more) => {
        const route = asked[at]!;
        const keys = Object.keys(jsonSchema(route)?.properties ?? {});
        const body = Object.fromEntries(keys.map((key, index) => [key, index % 2 === 0 ? JSON.parse(text) : Object.values(more)[index]]));
        for (const given of [JSON.parse(text), body]) {
          const { status, what } = await ask(route, filled(route.path, 'x'), given);
          expect(status, what).toBeLessThan(500);
        }
      }),
      { numRuns: process.env.PLATEWRIGHT_LONG ? 5_000 : 150 },
    );
    expect(server.logged.filter(line => line.startsWith('fault'))).toEqual([]);
  });
});
