import { afterAll, beforeAll, expect, test } from 'vitest';
import { foodDes, nutData, weight } from '#adapters/datasets/datasets.fixture.ts';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer(false);
});
afterAll(() => server.close());

const texts: Readonly<Record<string, string>> = { 'FOOD_DES.txt': foodDes, 'NUT_DATA.txt': nutData, 'WEIGHT.txt': weight };

async function send(files: Readonly<Record<string, string>>, headers: Record<string, string> = {}) {
  const body = new FormData();
  for (const [name, text] of Object.entries(files)) body.append('files', new File([text], name));
  const url = 'http://127.0.0.1:4173/api/references';
  const response = await server.app.request(url, { method: 'POST', body, headers: { host: '127.0.0.1:4173', ...headers } });
  // biome-ignore lint/suspicious/noExplicitAny: answers of several shapes
  return { status: response.status, body: (await response.json()) as any };
}

const label = {
  name: 'Kohlrabi sticks',
  category: 'sticks',
  serving: { grams: 100 },
  panel: { energyKcal: 25, fatG: 0, carbohydrateG: 6, proteinG: 2, sodiumMg: 20 },
  statement: 'Kohlrabi.',
};

test('[SRV-14] files of a dataset are kept, listed and removed', async () => {
  const { status, body } = await send({ ...texts, 'NUT_DATA.txt': `${nutData}~11241~^~307~^twenty^\n` });
  expect(status).toBe(200);
  expect(body.report).toMatchObject([{ code: 'figure-not-readable', place: { file: 'NUT_DATA.txt', line: 16 } }]);
  const kept = [{ dataset: 'usda-sr', foods: 6, edition: 'newest figure of 2015-03' }];
  expect(body.kept).toMatchObject(kept);
  expect((await server.call('GET', '/references')).body).toMatchObject(kept);
  expect((await server.call('DELETE', '/references/usda-sr')).body).toEqual([]);
  expect((await server.call('DELETE', '/references/usda-sr')).body).toMatchObject({ code: 'reference-not-found', status: 404 });
});

test('[SRV-14] files of no dataset are refused, and nothing is kept', async () => {
  expect((await send({ 'notes.txt': 'x' })).body).toMatchObject({ code: 'reference-not-recognized', status: 422 });
  expect((await send({})).body).toMatchObject({ code: 'request-not-valid' });
  expect((await send(texts, { origin: 'http://evil.example' })).body.code).toBe('origin-refused');
  expect((await server.call('GET', '/references')).body).toEqual([]);
});

test('[SRV-15] an import, a removal and a restore have the estimates made anew with the tables that stand', {
  timeout: 60_000,
}, async () => {
  const { body: food } = await server.call('POST', '/foods', { label });
  const minerals = async () => (await server.call('GET', `/foods/${food.id}/minerals`)).body;
  const phosphorus = async (): Promise<[number, number]> => (await minerals()).minerals[0].sureMg;
  const width = async (): Promise<number> => {
    const [lo, hi] = await phosphorus();
    return hi - lo;
  };
  // Nobody knows kohlrabi: it may hold what any food holds.
  const unknown = await width();
  await send(texts);
  // SR28 11241: 46 mg of phosphorus in 100 g.
  const known = await width();
  const [lo, hi] = await phosphorus();
  expect(lo).toBeLessThan(46);
  expect(hi).toBeGreaterThan(46);
  expect(unknown).toBeGreaterThan(3 * known);
  const file = await server.archiveOf(false);
  await server.call('DELETE', '/references/usda-sr');
  expect(await width()).toBe(unknown);
  await server.call('DELETE', '/workspace', { confirm: 'delete everything' });
  expect((await server.call('GET', '/references')).body).toEqual([]);
  const { id } = (await server.bring(file)).body;
  await server.call('POST', `/archives/${id}/restore`, { into: 'empty', withClients: false });
  expect(await width()).toBe(known);
});
