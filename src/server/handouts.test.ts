import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

let server: Awaited<ReturnType<typeof testServer>>;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const demoTopic = JSON.parse(readFileSync(fileURLToPath(new URL('../../data/demo/handouts/topic-sandwich.json', import.meta.url)), 'utf8'));
const raw = async (path: string): Promise<Response> =>
  server.app.request(`http://127.0.0.1:4173/api${path}`, { headers: { host: '127.0.0.1:4173' } });

/** A demo client with what is proposed signed as it is, where a figure is proposed. */
async function signedClient(setting: string) {
  const { body: clients } = await server.call('GET', '/clients');
  const { id } = clients.find((one: { setting: string }) => one.setting === setting);
  const { body: client } = await server.call('GET', `/clients/${id}`);
  if (client.prescriptions.length > 0) return client;
  // Fluid is signed as one figure: the most of what is proposed.
  const asSigned = ({ item, range, limit }: { item: string; range: [number, number | null]; limit: string }) =>
    item === 'fluid' ? { range: [0, range[1]], limit: 'at-most' } : { range, limit };
  const targets = client.targets.map(
    ({ item, range, limit, says }: { item: string; range?: [number, number]; limit: string; says: string }) => ({
      item,
      from: 'own',
      reason: 'agreed with the team',
      says,
      ...(range === undefined ? {} : asSigned({ item, range, limit })),
    }),
  );
  const json = { version: client.version, assessmentId: client.assessmentId, targets, by: 'Ottoline Farrowby', credentials: 'MS, RDN' };
  const { body } = await server.call('POST', `/clients/${id}/prescriptions`, json);
  return body;
}

const written = {
  language: 'en',
  author: { name: 'Ottoline Farrowby', credentials: 'MS, RDN' },
  categories: [{ category: 'sandwich slices', plateId: 'slices-on-low-sodium-bread', meal: 'lunch', aisle: 'Deli counter' }],
};

describe("a client's handout", () => {
  test('[HND-18] its numbers are those that were signed; the name of the client is not in it', async () => {
    const client = await signedClient('ckd-not-on-dialysis');
    const { status, body } = await server.call('POST', `/clients/${client.id}/handout`, { handout: written });
    expect([status, body.issues]).toEqual([200, []]);
    expect(body.grade.program.withoutFoodNames).toBeLessThanOrEqual(6);
    const page = await (await raw(`/client-previews/${body.previewId}`)).text();
    const sodium = client.prescriptions[0].targets.find(({ item }: { item: string }) => item === 'sodium').figure;
    expect(sodium).toMatch(/\d/);
    expect(page.replaceAll(',', '')).toContain(/\d{3,4}/.exec(sodium)![0]);
    expect(page).not.toContain(client.name);
    const fits = body.foods.filter(({ verdict }: { verdict: string }) => verdict === 'fits');
    expect(fits.length).toBeGreaterThan(0);
    expect(page).toContain(fits[0].name);
  });

  test('[HND-21] what is written is kept with the record, and told back', async () => {
    const { id, version } = await signedClient('hemodialysis');
    expect((await server.call('GET', `/clients/${id}/handout`)).body).toEqual({ handout: null, version });
    const { body } = await server.call('PUT', `/clients/${id}/handout`, { handout: written, version });
    expect(body.version).toBe(version + 1);
    expect((await server.call('GET', `/clients/${id}/handout`)).body).toEqual({ handout: written, version: version + 1 });
    expect((await server.call('PUT', `/clients/${id}/handout`, { handout: {}, version })).body.code).toBe('changed-meanwhile');
  });

  test('[HND-18] a prescription that was signed for an earlier assessment is told before the handout is given', async () => {
    const { id } = await signedClient('transplant');
    const made = async () => (await server.call('POST', `/clients/${id}/handout`, { handout: written })).body.cautions;
    expect(await made()).toEqual([]);
    const { body: client } = await server.call('GET', `/clients/${id}`);
    const treatment = { setting: 'ckd-not-on-dialysis' };
    const assessment = { ...client.assessment, on: '2026-06-15', treatment, allergies: ['tree nuts', 'sulfas'] };
    const { status } = await server.call('POST', `/clients/${id}/assessments`, { version: client.version, assessment });
    expect(status).toBe(200);
    expect(await made()).toEqual([
      expect.stringContaining('there is one of 2026-06-15: look whether its numbers still hold'),
      'The treatment is another one since: this handout is for transplant.',
      expect.stringContaining('“sulfas”, which this client avoids, is no food that the program knows'),
    ]);
  });

  test('[HND-18] without a signature it is refused; what is still to be written is told', async () => {
    const { body: made } = await server.call('POST', '/clients', { name: 'New one' });
    const refused = await server.call('POST', `/clients/${made.id}/handout`, { handout: written });
    expect([refused.status, refused.body.code]).toEqual([409, 'handout-not-signed']);
    const { id } = await signedClient('hemodialysis');
    const { body } = await server.call('POST', `/clients/${id}/handout`, { handout: { ...written, author: { name: '' } } });
    expect(body.previewId).toBeUndefined();
    expect(body.issues.map(({ place }: { place: { heading: string } }) => place.heading)).toEqual(['author.name']);
  });

  test('[HND-21] a page that was made for a client is gone when records are locked', async () => {
    const { id } = await signedClient('hemodialysis');
    await server.call('PUT', '/clients/passphrase', { next: 'four plain words here' });
    const { body } = await server.call('POST', `/clients/${id}/handout`, { handout: written });
    await server.call('POST', '/clients/lock', { open: false });
    const locked = await raw(`/client-previews/${body.previewId}`);
    expect(((await locked.json()) as { code: string }).code).toBe('clients-locked');
    await server.call('POST', '/clients/lock', { open: true, passphrase: 'four plain words here' });
    expect((await raw(`/client-previews/${body.previewId}`)).status).toBe(404);
  });
});

describe('a handout on a topic', () => {
  test('[HND-3] is kept as it was typed and judged by its yardstick', async () => {
    const [shipped] = (await server.call('GET', '/handouts')).body;
    expect(shipped).toMatchObject({ version: 1, isDemo: true, handout: { id: 'topic-sandwich' } });
    const { body: kept } = await server.call('PUT', '/handouts/copy', { handout: shipped.handout, version: null });
    expect(kept).toMatchObject({ version: 1, isDemo: false, handout: { id: 'copy' } });
    const { body } = await server.call('POST', '/handout-previews', { handout: kept.handout });
    expect(body.previewId).toEqual(expect.any(String));
    const page = await (await raw(`/guide-previews/${body.previewId}`)).text();
    expect(page).toContain('A sandwich that is low in sodium');
    // The file names foods by their labels: its aisles find them.
    expect(body.issues).toEqual([]);
    expect(page).toContain('Plant-based shelf');
    expect((await server.call('GET', '/handouts')).body).toHaveLength(2);
    expect((await server.call('DELETE', '/handouts/copy?version=1')).status).toBe(200);
    expect((await server.call('DELETE', '/handouts/copy?version=1')).body.code).toBe('handout-not-found');
  });

  test('[HND-4] numbers of a client are refused there', async () => {
    const { topic: _, ...rest } = demoTopic;
    const prescription = { targets: [], signed: { by: 'Ottoline Farrowby', on: '2026-06-15' } };
    const { body } = await server.call('POST', '/handout-previews', { handout: { ...rest, prescription } });
    expect(body.code).toBe('handout-not-valid');
  });
});
