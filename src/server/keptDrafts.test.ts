import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hc } from 'hono/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AppType } from './app.ts';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());
const call = (...given: Parameters<Server['call']>) => server.call(...given);

const passphrase = 'four grebes under the jetty';
const value = { on: '2026-06-1', goals: ['Quillenby wants soup'], labs: [{ analyte: 'potassium', value: '5.', unit: 'mmol/L' }] };

async function newClient(name = 'Q. D.'): Promise<{ id: string; version: number; drafts: string; draft: string }> {
  const { id, version } = (await call('POST', '/clients', { name })).body;
  return { id, version, drafts: `/clients/${id}/drafts`, draft: `/clients/${id}/drafts/assessment` };
}

describe('what lies half typed', () => {
  test('[SRV-26] is given back as it was kept, by client and form, with the revision to send next time', async () => {
    const { draft, drafts, id, version } = await newClient();
    expect(await call('GET', draft)).toMatchObject({ status: 200, body: { draft: null } });
    expect((await call('PUT', draft, { revision: null, value })).body).toEqual({ revision: 1, savedAt: '2026-06-15T12:00:00.000Z' });
    expect((await call('GET', draft)).body).toEqual({ draft: { revision: 1, savedAt: '2026-06-15T12:00:00.000Z', value } });
    expect((await call('GET', `${drafts}/handout`)).body).toEqual({ draft: null });
    expect((await call('PUT', draft, { revision: 1, value: {} })).body.revision).toBe(2);
    // The record itself is as it was: who has it open need not load it again.
    expect((await call('GET', `/clients/${id}`)).body).toMatchObject({ version, assessments: [] });
    // What is saved leaves the draft: the page drops it.
    await call('PUT', `/clients/${id}/meals`, { version, pattern: [{ name: 'lunch', percent: 100 }] });
    expect((await call('GET', draft)).body.draft.revision).toBe(2);
    expect((await call('DELETE', `${draft}?revision=2`)).body).toEqual({ done: true });
    expect((await call('GET', draft)).body).toEqual({ draft: null });
    expect((await call('DELETE', `${draft}?revision=2`)).status).toBe(200);
  });

  test('[SRV-26] a window that did not see the last saving is told, and changes nothing', async () => {
    const { draft } = await newClient();
    await call('PUT', draft, { revision: null, value });
    await call('PUT', draft, { revision: 1, value: { second: true } });
    const refused = { status: 409, body: { code: 'changed-meanwhile' } };
    expect(await call('PUT', draft, { revision: null, value })).toMatchObject(refused);
    expect(await call('PUT', draft, { revision: 1, value })).toMatchObject(refused);
    expect(await call('DELETE', `${draft}?revision=1`)).toMatchObject(refused);
    expect((await call('GET', draft)).body.draft).toMatchObject({ revision: 2, value: { second: true } });
    await call('DELETE', `${draft}?revision=2`);
    expect(await call('PUT', draft, { revision: 2, value })).toMatchObject(refused);
    // Two at once: one is kept.
    const both = await Promise.all(['a', 'b'].map(key => call('PUT', draft, { revision: null, value: { [key]: 1 } })));
    expect(both.map(({ status }) => status).sort()).toEqual([200, 409]);
  });

  test('[SRV-26] the list says about whom, in which form and since when, and nothing of what was typed', async () => {
    const { id, draft, drafts } = await newClient();
    await call('PUT', draft, { revision: null, value });
    await call('PUT', `${drafts}/results`, { revision: null, value });
    const { body, headers } = await call('GET', '/clients/drafts');
    const own = body.filter(({ clientId }: { clientId: string }) => clientId === id);
    expect(own.map(({ form }: { form: string }) => form).sort()).toEqual(['assessment', 'results']);
    expect(own[0]).toEqual({ clientId: id, form: 'assessment', savedAt: '2026-06-15T12:00:00.000Z' });
    expect(JSON.stringify(body)).not.toContain('Quillenby');
    expect(headers.get('cache-control')).toBe('no-store');
    const { headers: ofDraft } = await call('GET', draft);
    expect(ofDraft.get('cache-control')).toBe('no-store');
    expect(JSON.stringify((await call('GET', '/clients/export')).body)).not.toContain('Quillenby');
  });

  test('[SRV-26] too large, too deep, a prototype, no object, another form, nobody: refused, and what was kept stays', async () => {
    const { draft, drafts, id } = await newClient();
    await call('PUT', draft, { revision: null, value });
    const put = (text: string) => call('PUT', draft, `{"revision":1,"value":${text}}`);
    const levels = (count: number): string => `{"a":${'['.repeat(count)}${']'.repeat(count)}}`;
    expect(await put(`{"a":"${'é'.repeat(131_072)}"}`)).toMatchObject({ status: 413, body: { code: 'request-too-large' } });
    for (const wrong of [levels(50_000), levels(198), '{"__proto__":{"x":1}}', 'null', '[]', '"text"', '7'])
      expect([wrong.slice(0, 30), await put(wrong)]).toMatchObject([
        wrong.slice(0, 30),
        { status: 422, body: { code: 'request-not-valid' } },
      ]);
    for (const path of [`${drafts}/novel`, `${drafts}/__proto__`, `${drafts}/a%00b`, '/clients/nobody/drafts/assessment'])
      expect([path, (await call('GET', path)).status, (await call('PUT', path, { revision: null, value })).status]).toEqual([
        path,
        422,
        422,
      ]);
    for (const revision of [0, -1, 1.5, '1', 1e300, undefined])
      expect([revision, (await call('PUT', draft, { revision, value })).status]).toEqual([revision, 422]);
    const nobody = '/clients/00000000-0000-4000-8000-0000000000ff/drafts/assessment';
    for (const [method, path, body] of [
      ['GET', nobody],
      ['PUT', nobody, { revision: null, value }],
      ['DELETE', `${nobody}?revision=1`],
    ] as const)
      expect((await call(method, path, body)).body.code).toBe('client-not-found');
    expect((await call('GET', draft)).body.draft).toMatchObject({ revision: 1, value });
    expect((await call('GET', `/clients/${id}`)).status).toBe(200);
    expect(server.logged.join()).not.toContain('Quillenby');
  });

  test('[SRV-26] whatever JSON can say comes back: lone surrogates, NUL, names of prototypes within, 150 levels', async () => {
    const { draft } = await newClient();
    let revision: number | null = null;
    for (const text of [
      '{"a":"\\ud800","\\udc00":"\\u0000"}',
      '{"deep":{"__proto__":{"x":1},"constructor":1}}',
      '{"constructor":{"prototype":{}},"toString":"x"}',
      `{"a":${'['.repeat(150)}${']'.repeat(150)}}`,
      `{"a":"${'x'.repeat(262_136)}"}`,
    ]) {
      const kept: { status: number; body: { revision: number } } = await call('PUT', draft, `{"revision":${revision},"value":${text}}`);
      expect([text.slice(0, 40), kept.status]).toEqual([text.slice(0, 40), 200]);
      ({ revision } = kept.body);
      expect(JSON.stringify((await call('GET', draft)).body.draft.value)).toBe(JSON.stringify(JSON.parse(text)));
    }
  });

  test('[SRV-22] [SRV-26] it goes with the client who is erased, and comes back when that is undone', async () => {
    const { id, version, draft } = await newClient('E. D.');
    await call('PUT', draft, { revision: null, value });
    await call('DELETE', `/clients/${id}`, { version, name: 'E. D.' });
    expect((await call('GET', draft)).body.code).toBe('client-not-found');
    expect(await call('PUT', draft, { revision: 1, value })).toMatchObject({ status: 404 });
    expect((await call('GET', '/clients/drafts')).body.map(({ clientId }: { clientId: string }) => clientId)).not.toContain(id);
    await call('POST', `/clients/${id}/bring-back`);
    expect((await call('GET', draft)).body.draft).toMatchObject({ revision: 1, value });
    // What a window sends that was open all the while is kept.
    expect((await call('PUT', draft, { revision: 1, value })).status).toBe(200);
  });

  test('[SRV-13] [SRV-26] it locks with the records, under a new passphrase too, and no file holds a word of it', async () => {
    const { draft } = await newClient();
    await call('PUT', draft, { revision: null, value });
    await call('PUT', '/clients/passphrase', { next: passphrase });
    await call('POST', '/clients/lock', { open: false });
    for (const [method, path, body] of [
      ['GET', draft],
      ['PUT', draft, { revision: 1, value }],
      ['DELETE', `${draft}?revision=1`],
      ['GET', '/clients/drafts'],
    ] as const)
      expect([path, await call(method, path, body)]).toMatchObject([path, { status: 423, body: { code: 'clients-locked' } }]);
    const files = readdirSync(server.folder).filter(name => name.startsWith('clients'));
    expect(files).toContain('clients.sqlite');
    for (const name of files) expect([name, readFileSync(join(server.folder, name)).includes('Quillenby')]).toEqual([name, false]);
    await call('POST', '/clients/lock', { open: true, passphrase });
    expect((await call('GET', draft)).body.draft).toMatchObject({ revision: 1, value });
  });

  test('[ARC-1] [SRV-26] an archive carries it sealed, and a new workspace has it again', async () => {
    const { draft } = await newClient();
    await call('PUT', draft, { revision: null, value });
    const file = await server.archiveOf(true);
    expect(Buffer.from(file).includes('Quillenby')).toBe(false);
    const other = await testServer(false);
    try {
      const { id } = (await other.bring(file)).body;
      const restored = await other.call('POST', `/archives/${id}/restore`, { into: 'empty', withClients: true, passphrase });
      expect([restored.status, restored.body]).toMatchObject([200, { clients: { damaged: 0 } }]);
      expect((await other.call('GET', draft)).body.draft).toMatchObject({ revision: 1, value });
      const again = (await other.bring(file)).body.id;
      await other.call('PUT', draft, { revision: 1, value: { typed: 'since' } });
      const beside = await other.call('POST', `/archives/${again}/restore`, { into: 'beside', withClients: true, passphrase });
      expect(beside.body.clients).toMatchObject({ added: 0, conflicts: 0, draftsLeftOut: 1 });
      expect((await other.call('GET', draft)).body.draft.value).toEqual({ typed: 'since' });
    } finally {
      await other.close();
    }
  });

  test('[SRV-26] another form, and a value that is none, do not compile; what is given back is any JSON', async () => {
    const { api } = hc<AppType>('http://localhost', { fetch: async () => new Response('{"draft":null}') });
    const draft = api.clients[':id'].drafts[':form'];
    const body = await (await draft.$get({ param: { id: 'x', form: 'assessment' } })).json();
    const read: Readonly<Record<string, unknown>> | undefined = 'draft' in body ? body.draft?.value : {};
    expect(read).toBeUndefined();
    await draft.$put({ param: { id: 'x', form: 'handout' }, json: { revision: null, value: { any: [1] } } });
    await draft.$delete({ param: { id: 'x', form: 'results' }, query: { revision: '3' } });
    // @ts-expect-error a form that is none
    await draft.$get({ param: { id: 'x', form: 'novel' } });
    // @ts-expect-error a draft without the revision that was seen
    await draft.$put({ param: { id: 'x', form: 'handout' }, json: { value: {} } });
  });
});
