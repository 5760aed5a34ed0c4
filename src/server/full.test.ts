import { expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

// RFC 4918, 11.5: 507 is "Insufficient Storage".
test('[SRV-50] on a full disk a write is answered by 507 with what to do; what was saved is read', async () => {
  const server = await testServer(false, 150);
  const put = (name: string) =>
    server.call('POST', '/foods', { label: { name, statement: 'WATER, SALT. '.repeat(500), panel: { sodiumMg: 10 } } });
  const names: string[] = [];
  let last = await put('Food 0');
  for (let at = 1; last.status === 200 && at < 500; at++) {
    names.push(`Food ${at - 1}`);
    last = await put(`Food ${at}`);
  }
  expect(last.status).toBe(507);
  expect(last.headers.get('content-type')).toBe('application/problem+json');
  expect(last.body).toMatchObject({ code: 'database-full', title: 'The disk is full', nextStep: expect.stringContaining('Make room') });
  expect(names.length).toBeGreaterThan(5);
  const foods = (await server.call('GET', '/foods')).body as { name: string }[];
  expect(foods.map(({ name }) => name).sort()).toEqual([...names].sort());
  expect(server.logged.filter(line => line.startsWith('fault'))).toEqual([]);
  await server.close();
});
