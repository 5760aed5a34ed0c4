import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

let server: Awaited<ReturnType<typeof testServer>>;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const raw = (method: string, path: string, body?: unknown) =>
  server.app.request(`http://127.0.0.1:4173/api${path}`, {
    method,
    headers: { host: '127.0.0.1:4173', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });

interface Proposed {
  readonly item: string;
  readonly range?: readonly [number, number | null];
  readonly limit?: string;
  readonly says: string;
}

/** A demo client who is not on dialysis, with what is proposed signed as it is. */
async function signedClient(): Promise<{ id: string; version: number; name: string }> {
  const { body: clients } = await server.call('GET', '/clients');
  const { id } = clients.find(({ setting }: { setting: string }) => setting === 'ckd-not-on-dialysis');
  const { body: client } = await server.call('GET', `/clients/${id}`);
  if (client.prescriptions.length > 0) return client;
  const targets = client.targets.map(({ item, range, limit, says }: Proposed) => ({
    item,
    from: 'proposal',
    says,
    ...(range === undefined ? {} : { range, limit }),
  }));
  const signing = { version: client.version, assessmentId: client.assessmentId, targets, by: 'Ottoline Farrowby', credentials: 'RDN' };
  const signed = await server.call('POST', `/clients/${id}/prescriptions`, signing);
  expect(signed.status).toBe(200);
  return signed.body;
}
const written = {
  language: 'en',
  author: { name: 'Ottoline Farrowby', credentials: 'RDN' },
  categories: [{ category: 'sandwich slices', plateId: 'slices-on-low-sodium-bread', meal: 'lunch', aisle: 'Deli counter' }],
};
const preview = async (id: string): Promise<string> =>
  (await server.call('POST', `/clients/${id}/handout`, { handout: written })).body.previewId;

describe('what the browser and the program keep of a client', () => {
  // A browser that keeps answers shows a client to the next person at this desk, after locking and after erasing.
  test('[SRV-18] no answer about clients may be kept by the browser: data, files, previews and faults', async () => {
    const { id } = await signedClient();
    const shown = await preview(id);
    const draft = `/clients/${id}/drafts/handout`;
    const calls: [method: string, path: string, status: number, body?: unknown][] = [
      ['GET', '/clients', 200],
      ['GET', '/clients/lock', 200],
      ['GET', '/clients/health', 200],
      ['GET', '/clients/erased', 200],
      ['GET', '/clients/export', 200],
      ['GET', `/clients/${id}`, 200],
      ['GET', `/clients/${id}/note`, 200],
      ['GET', `/clients/${id}/note-docx`, 200],
      ['GET', `/clients/${id}/fhir`, 200],
      ['GET', `/clients/${id}/handout`, 200],
      ['POST', `/clients/${id}/handout`, 200, { handout: written }],
      ['PUT', draft, 200, { revision: null, value: { ...written } }],
      ['GET', draft, 200],
      ['PUT', draft, 409, { revision: null, value: {} }],
      ['GET', '/clients/drafts', 200],
      ['DELETE', `${draft}?revision=1`, 200],
      ['GET', `/client-previews/${shown}`, 200],
      ['GET', '/client-previews/none', 404],
      ['GET', '/clients/00000000-0000-4000-8000-0000000000ff', 404],
      ['POST', '/clients', 422, { name: '' }],
      ['POST', `/clients/${id}/assessments`, 422, { version: 1, assessment: {} }],
    ];
    for (const [method, path, status, body] of calls) {
      const response = await raw(method, path, body);
      expect([response.status, response.headers.get('cache-control')], `${method} ${path}`).toEqual([status, 'no-store']);
    }
    // The paper takes a browser to print; with one or without, the answer is not kept.
    const paper = await raw('POST', `/clients/${id}/handout-paper`, { handout: written });
    expect([200, 503]).toContain(paper.status);
    expect(paper.headers.get('cache-control')).toBe('no-store');
  });

  // Erasing is what a client may ask for: a page with their numbers that can still be opened was not erased.
  test('[SRV-19] the preview of an erased client is gone', async () => {
    const { id, version, name } = await signedClient();
    const shown = await preview(id);
    expect((await raw('GET', `/client-previews/${shown}`)).status).toBe(200);
    expect((await raw('DELETE', `/clients/${id}`, { version, name })).status).toBe(200);
    expect((await raw('GET', `/client-previews/${shown}`)).status).toBe(404);
    expect((await raw('GET', `/clients/${id}`)).status).toBe(404);
  });
});
