import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type ServedPartHeader, servedPart } from './servedPart.ts';
import { testServer } from './testWorld.fixture.ts';

const header: ServedPartHeader = 'platewright-browser-part';

test('[SRV-70] every answer to a browser that was let in tells which browser part is served', async () => {
  const server = await testServer(false);
  for (const path of ['/workspace', '/foods/nobody', '/nothing-here', '/client-events']) {
    const { headers, body } = await server.app.request(`http://127.0.0.1:4173/api${path}`, { headers: { host: '127.0.0.1:4173' } });
    expect([path, headers.get(header)]).toEqual([path, 'part-of-the-tests']);
    await body?.cancel();
  }
  const refused = await server.outside.request('http://127.0.0.1:4173/api/workspace', { headers: { host: '127.0.0.1:4173' } });
  expect([refused.status, refused.headers.get(header)]).toEqual([403, null]);
  await server.close();
});

test('[SRV-70] another build is another browser part, the same build the same', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-part-'));
  const page = (script: string) => writeFileSync(join(folder, 'index.html'), `<script type="module" src="/assets/${script}"></script>`);
  page('index-a.js');
  const first = await servedPart(folder);
  expect(await servedPart(folder)).toBe(first);
  page('index-b.js');
  expect(await servedPart(folder)).not.toBe(first);
  rmSync(folder, { recursive: true });
});
