import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

let server: Awaited<ReturnType<typeof testServer>>;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

async function raw(path: string, init: { method?: string; body?: unknown } = {}): Promise<Response> {
  return server.app.request(`http://127.0.0.1:4173/api${path}`, {
    method: init.method ?? 'GET',
    headers: { host: '127.0.0.1:4173', 'content-type': 'application/json' },
    ...(init.body === undefined ? {} : { body: JSON.stringify(init.body) }),
  });
}

const preview = async (guide: unknown, guideId = 'sandwich-slices') =>
  (await server.call('POST', '/guide-previews', { guide, guideId })).body;
const demoGuide = async () => (await server.call('GET', '/guides/sandwich-slices')).body;

describe('guides', () => {
  test('[GDE-25] the demo guide is listed with its counts, and what it says of foods finds them', async () => {
    const { body } = await server.call('GET', '/guides');
    expect(body).toEqual([expect.objectContaining({ id: 'sandwich-slices', isDemo: true, isPublished: true, toMend: 0 })]);
    const [{ counts }] = body;
    expect(counts.read).toBe(counts.fits + counts.nearly + counts.leftOut);
    const { guide } = await demoGuide();
    const { issues, foods } = await preview(guide);
    expect(issues).toEqual([]);
    expect(foods).toHaveLength(counts.read);
    expect(Object.keys(guide.whereToBuy).every(id => foods.some((food: { foodId: string }) => food.foodId === id))).toBe(true);
  });

  test('[GDE-25] a guide is kept as it was typed; what is still to be written is told', async () => {
    const guide = { title: '', survey: { category: 'sandwich slices' } };
    const { body: kept } = await server.call('PUT', '/guides/unfinished', { guide, version: null });
    expect(kept).toEqual({ guide: { ...guide, id: 'unfinished' }, version: 1, isDemo: false, isPublished: false, isChanged: false });
    const { previewId, issues } = await preview(guide, 'unfinished');
    expect(previewId).toBeUndefined();
    expect(issues.map(({ place }: { place: { heading: string } }) => place.heading)).toEqual(
      expect.arrayContaining(['title', 'purpose', 'survey.plateId', 'author']),
    );
    const refused = await server.call('POST', '/guides/unfinished/publish', { version: 1 });
    expect([refused.status, refused.body.code]).toEqual([422, 'guide-not-valid']);
    expect((await server.call('PUT', '/guides/unfinished', { guide, version: null })).body.code).toBe('changed-meanwhile');
    expect((await server.call('DELETE', '/guides/unfinished?version=1')).status).toBe(200);
    expect((await server.call('GET', '/guides/unfinished')).body.code).toBe('guide-not-found');
  });

  test('[GDE-26] a preview is shown in a frame of the workbench that may run and load nothing', async () => {
    const { guide } = await demoGuide();
    const { previewId } = await preview({ ...guide, title: 'Slices <script>alert(1)</script>' });
    const page = await raw(`/guide-previews/${previewId}`);
    expect(page.headers.get('content-type')).toMatch(/^text\/html/);
    const policy = page.headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain('sandbox');
    expect(policy).toContain("frame-ancestors 'self'");
    expect(policy).not.toContain('script');
    expect(await page.text()).toContain('Slices &lt;script&gt;alert(1)&lt;/script&gt;');
    expect((await raw('/guide-previews/none')).status).toBe(404);
  });

  test('[GDE-7] a published guide keeps its labels: a later label marks its food, a withdrawn one takes it off', async () => {
    const before = await demoGuide();
    const { body: published } = await server.call('POST', '/guides/sandwich-slices/publish', { version: before.version });
    expect(published).toMatchObject({ isPublished: true, version: before.version + 1, guide: { publishedOn: '2026-06-15' } });
    const asPublished = await preview(published.guide);
    expect(asPublished.takenOff).toEqual([]);
    const [changed, gone] = asPublished.foods.filter(({ verdict }: { verdict: string }) => verdict === 'fits');
    const food = (await server.call('GET', `/foods/${changed.foodId}`)).body;
    const standing = food.history.find(({ stands }: { stands: boolean }) => stands);
    const saltier = { ...standing.printed, readOn: '2026-06-20', panel: { ...standing.printed.panel, sodiumMg: 900 } };
    expect((await server.call('POST', `/foods/${food.id}/labels`, { label: saltier, version: food.version, kind: 'read' })).status).toBe(
      200,
    );
    const other = (await server.call('GET', `/foods/${gone.foodId}`)).body;
    for (const { id } of other.history.filter((one: { withdrawn?: unknown }) => one.withdrawn === undefined)) {
      const { version } = (await server.call('GET', `/foods/${gone.foodId}`)).body;
      await server.call('POST', `/labels/${id}/withdraw`, { version, reason: 'read from the wrong package' });
    }
    const after = await preview(published.guide);
    expect(after.takenOff).toHaveLength(2);
    expect(after.takenOff[0]).toContain(changed.name);
    expect(after.takenOff[1]).toContain(gone.name);
    expect(after.counts.read).toBe(asPublished.counts.read - 1);
    expect((await server.call('GET', '/guides')).body[0].takenOff).toBe(2);
  });

  test('[GDE-24] files come one by one or as a site in one ZIP file, published guides alone', async () => {
    const csv = await raw('/guides/sandwich-slices/files/csv');
    expect(csv.headers.get('content-type')).toMatch(/^text\/csv/);
    expect(csv.headers.get('content-disposition')).toBe('attachment; filename="sandwich-slices.csv"');
    expect((await csv.text()).split('\n')[0]).toMatch(/^section,foodId,name/);
    const { guide } = await demoGuide();
    await server.call('PUT', '/guides/not-yet', { guide: { ...guide, title: 'Not yet published' }, version: null });
    const site = await raw('/guide-site', { method: 'POST', body: { siteUrl: 'https://guides.example/' } });
    expect(site.headers.get('content-type')).toBe('application/zip');
    const names = Object.keys(unzipSync(new Uint8Array(await site.arrayBuffer())));
    expect(names).toEqual(expect.arrayContaining(['index.html', 'feed.xml', 'sitemap.xml', 'guides/sandwich-slices.html']));
    expect(names.filter(name => name.includes('not-yet'))).toEqual([]);
    // Readers have what was published: words that were typed since, and a title that was emptied, wait for the next time.
    const current = await demoGuide();
    const { body: typing } = await server.call('PUT', '/guides/sandwich-slices', {
      guide: { ...current.guide, title: '', purpose: 'HALF TYPED DRAFT' },
      version: current.version,
    });
    expect(typing.isChanged).toBe(true);
    const meanwhile = unzipSync(new Uint8Array(await (await raw('/guide-site', { method: 'POST', body: {} })).arrayBuffer()));
    expect(Object.values(meanwhile).filter(file => Buffer.from(file).includes('HALF TYPED DRAFT'))).toEqual([]);
    const back = await server.call('PUT', '/guides/sandwich-slices', { guide: current.guide, version: typing.version });
    expect(back.body.isChanged).toBe(false);
    const wrong = await raw('/guide-site', { method: 'POST', body: { siteUrl: 'javascript:alert(1)' } });
    expect(((await wrong.json()) as { code: string }).code).toBe('unknown-option');
  });

  test('a guide whose plate is gone is listed, and its preview says what to do', async () => {
    const { guide } = await demoGuide();
    const lost = { ...guide, survey: { ...guide.survey, plateId: 'gone' } };
    await server.call('PUT', '/guides/lost', { guide: lost, version: null });
    const { body } = await server.call('GET', '/guides');
    expect(body.find(({ id }: { id: string }) => id === 'lost')).toMatchObject({ toMend: 1 });
    const told = await server.call('POST', '/guide-previews', { guide: lost, guideId: 'lost' });
    expect([told.status, told.body.code]).toEqual([404, 'plate-not-found']);
  });

  test('[GDE-25] a guide that is removed and put back is as it was, with the labels it was published on', async () => {
    const { guide, version, published } = await demoGuide();
    expect(published.labels.length).toBeGreaterThan(10);
    const { body: copy } = await server.call('PUT', '/guides/copy', { guide, version: null, published });
    expect(copy).toMatchObject({ guide: { ...guide, id: 'copy' }, published, isPublished: true, isDemo: false });
    expect(version).toBeGreaterThan(0);
    const { body: kept } = await server.call('PUT', '/guides/copy', { guide, version: 1 });
    expect(kept.published).toEqual(published);
  });

  test('[GDE-7] a guide that was turned to another category has nothing that was taken off', async () => {
    const { guide } = await demoGuide();
    const turned = { ...guide, survey: { ...guide.survey, category: 'cold cereals', plateId: 'cereal-with-milk' } };
    expect((await preview(turned)).takenOff).toEqual([]);
  });

  test('purging the demo takes its guide along', async () => {
    await server.call('DELETE', '/demo');
    expect((await server.call('GET', '/guides/sandwich-slices')).status).toBe(404);
    expect((await server.call('GET', '/guides/not-yet')).status).toBe(200);
  });
});
