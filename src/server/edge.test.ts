import { createRoute, z } from '@hono/zod-openapi';
import { hc } from 'hono/client';
import { describe, expect, test } from 'vitest';
import { edgeAnswer, edgeBody } from './edge.ts';
import { newApi } from './newApi.ts';
import { answers, jsonBody } from './routes/answers.ts';

const schema = z.object({ name: z.string(), sizes: z.array(z.number()), open: z.number().nullable().exactOptional() });

const app = newApi(() => undefined).openapi(
  createRoute({
    method: 'post',
    path: '/things',
    request: { body: jsonBody(z.object({ thing: edgeBody(schema, 'Thing') })) },
    responses: answers(z.object({ kept: edgeAnswer(schema, 'Thing'), unread: z.unknown() }), 'The thing'),
  }),
  context => {
    const { thing } = context.req.valid('json');
    // @ts-expect-error nothing is known of what a codec has not read
    const _: string = thing.name;
    return context.json({ kept: { name: 'kept', sizes: [1] }, unread: thing }, 200);
  },
);
app.doc31('/openapi.json', { openapi: '3.1.0', info: { title: 'things', version: '1' } });

describe('a body that a codec of the core reads', () => {
  test('[SRV-5] arrives unread, whatever its inside: the codec tells what is wrong', async () => {
    const thing = { name: 7, more: true };
    const answer = await app.request('/things', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ thing }),
    });
    expect(await answer.json()).toEqual({ kept: { name: 'kept', sizes: [1] }, unread: thing });
  });

  test.each([[null], ['text'], [[1]], [7], [undefined]])('[SRV-5] %j is no object and is refused with its place', async thing => {
    const answer = await app.request('/things', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ thing }),
    });
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ code: 'request-not-valid', detail: 'thing: an object.' });
  });

  test('[SRV-6] is described with its inside', async () => {
    const description = await (await app.request('/openapi.json')).json();
    const properties = { name: { type: 'string' }, sizes: { type: 'array', items: { type: 'number' } } };
    expect(description).toMatchObject({ components: { schemas: { Thing: { type: 'object', properties, required: ['name', 'sizes'] } } } });
  });

  test('a caller who sends another inside does not compile', () => {
    const client = hc<typeof app>('http://localhost', { fetch: async () => new Response('{}') });
    void client.things.$post({ json: { thing: { name: 'a', sizes: [1, 2] } } });
    // @ts-expect-error a misspelt key
    void client.things.$post({ json: { thing: { name: 'a', size: [1] } } });
    // @ts-expect-error a figure as text
    void client.things.$post({ json: { thing: { name: 'a', sizes: ['1'] } } });
  });
});
