import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formulaCatalog } from '#core/client/formulas/catalog/formulaCatalog.ts';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

describe('formulas', () => {
  test('[SRV-40] each is listed with its description, and its worked example comes out', async () => {
    const { status, body } = await server.call('GET', '/formulas');
    expect([status, body.length]).toEqual([200, formulaCatalog.length]);
    for (const { name, example } of body) {
      const worked = await server.call('POST', `/formulas/${name}`, { inputs: example.inputs });
      expect([name, worked.status, worked.body.issues]).toEqual([name, 200, []]);
      expect(example.results.length, name).toBeGreaterThan(0);
      expect(worked.body.results).toEqual(expect.arrayContaining(example.results.map((one: object) => expect.objectContaining(one))));
    }
    expect(
      (await server.call('POST', '/formulas/protein-per-day', { inputs: { from: '1.2', weight: { value: 70, unit: 'kg' } } })).body.results,
    ).toEqual([
      {
        kind: 'range',
        name: 'protein',
        label: 'Protein',
        text: 'at least 84.0 g/day',
        range: [84, null],
        rounded: [84, null],
        unit: 'g/day',
      },
    ]);
  });

  test('[SRV-40] bad input is answered with issues, a wrong shape and an unknown name with a problem', async () => {
    const { status, body } = await server.call('POST', '/formulas/body-mass-index', { inputs: { weight: '72' } });
    expect([status, body.results]).toEqual([200, null]);
    expect(body.issues).toEqual([
      { code: 'no-unit', place: { heading: 'weight' }, found: '72', expected: 'its unit: kg or lb' },
      { code: 'input-missing', place: { heading: 'height' }, found: 'nothing', expected: 'a number in cm or ft in or in or m' },
    ]);
    for (const wrong of [{}, { inputs: 3 }, { inputs: { weight: { kg: 3 } } }, { inputs: { weight: null } }, []]) {
      expect(await server.call('POST', '/formulas/body-mass-index', wrong)).toMatchObject({
        status: 422,
        body: { code: 'request-not-valid' },
      });
    }
    expect(await server.call('POST', '/formulas/no-such', { inputs: {} })).toMatchObject({
      status: 404,
      body: { code: 'formula-not-found' },
    });
  });

  test('[SRV-40] nothing that is typed is logged or written anywhere', async () => {
    await server.call('POST', '/formulas/body-mass-index', { inputs: { weight: '73.5177 kg', height: '1 furlong 4417' } });
    await server.call('POST', '/formulas/body-mass-index', { inputs: { weight: { value: '73.5177' } } });
    expect(server.logged.join('')).not.toMatch(/73\.5177|4417/);
    for (const file of readdirSync(server.folder)
      .map(name => join(server.folder, name))
      .filter(path => statSync(path).isFile())) {
      expect(readFileSync(file).includes('73.5177'), file).toBe(false);
    }
  });
});
