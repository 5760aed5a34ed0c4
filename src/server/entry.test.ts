import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testSecret, testServer } from './testWorld.fixture.ts';

let server: Awaited<ReturnType<typeof testServer>>;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

/** A GET without any cookie but what is given. */
const get = (path: string, headers: Record<string, string> = {}, host = '127.0.0.1:4173') =>
  server.outside.request(`http://${host}${path}`, { headers: { host, ...headers } });
const cookieOf = (answer: Response): string => answer.headers.get('set-cookie')!.split(';')[0]!;

describe('the printed address', () => {
  test('[SRV-41] is exchanged for a cookie and leaves the secret behind', async () => {
    const opened = await get(`/foods/x?entry=${testSecret}&plate=a%20b`);
    expect([opened.status, opened.headers.get('location')]).toEqual([303, '/foods/x?plate=a+b']);
    expect(opened.headers.get('cache-control')).toBe('no-store');
    expect(opened.headers.get('referrer-policy')).toBe('no-referrer');
    // RFC 6265bis: a session cookie has neither Expires nor Max-Age; one without Domain goes to this host alone.
    expect(opened.headers.get('set-cookie')).toMatch(/^platewright-4173=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(opened.headers.get('set-cookie')).not.toContain(testSecret);
    expect((await get('/api/workspace', { cookie: cookieOf(opened) })).status).toBe(200);
  });

  test('[SRV-41] opens again, for a second browser, and on the name localhost', async () => {
    const first = cookieOf(await get(`/?entry=${testSecret}`));
    expect(cookieOf(await get(`/?entry=${testSecret}`))).toBe(first);
    const byName = await get(`/?entry=${testSecret}`, {}, 'localhost:4173');
    expect((await get('/api/foods', { cookie: cookieOf(byName) }, 'localhost:4173')).status).toBe(200);
  });

  test('[SRV-41] of an earlier start loses its secret as well where the browser is let in', async () => {
    const cookie = cookieOf(await get(`/?entry=${testSecret}`));
    const old = await get('/plates?entry=of-an-earlier-start', { cookie });
    expect([old.status, old.headers.get('location'), old.headers.get('set-cookie')]).toEqual([303, '/plates', null]);
  });

  test('[SRV-41] leads to no other machine', async () => {
    for (const path of ['//elsewhere.example/', '///elsewhere.example/', '/\\elsewhere.example/']) {
      const { headers } = await get(`${path}?entry=${testSecret}`);
      expect(new URL(headers.get('location')!, 'http://127.0.0.1:4173').origin, path).toBe('http://127.0.0.1:4173');
    }
  });
});

describe('without it', () => {
  test('[SRV-42] every call of the description is refused, before its body is looked at', async () => {
    const { body: description } = await server.call('GET', '/openapi.json');
    const calls = Object.entries<object>(description.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map(method => ({ path, method })),
    );
    expect(calls.length).toBeGreaterThan(60);
    for (const { path, method } of [...calls, { path: '/api/openapi.json', method: 'get' }, { path: '/api', method: 'get' }]) {
      const address = `http://127.0.0.1:4173${path.replaceAll(/\{\w+\}/g, 'x')}`;
      const body = method === 'get' || method === 'delete' ? undefined : '{"not json';
      const answer = await server.outside.request(address, {
        method: method.toUpperCase(),
        headers: { host: '127.0.0.1:4173', 'content-type': 'application/json' },
        ...(body !== undefined && { body }),
      });
      expect([method, path, answer.status]).toEqual([method, path, 403]);
      expect(await answer.json()).toMatchObject({ code: 'entry-refused', nextStep: expect.stringContaining('printed') });
    }
  });

  test('[SRV-42] every page and file is refused with what to do', async () => {
    for (const path of ['/', '/clients', '/assets/index.js', '/favicon.svg', '/nothing/here.css', '/?entry=wrong', '/?entry=']) {
      const answer = await get(path);
      expect([path, answer.status, answer.headers.get('content-type')]).toEqual([path, 403, 'text/html; charset=utf-8']);
      expect(answer.headers.get('cache-control')).toBe('no-store');
      expect(answer.headers.get('content-security-policy')).toMatch(/^default-src 'none'; style-src 'sha256-/);
      expect(await answer.text()).toContain('Open the address that Platewright printed when it was started');
    }
  });

  test('[SRV-42] neither the secret in the place of the cookie, nor a part of the cookie, nor that of another port lets in', async () => {
    const cookie = cookieOf(await get(`/?entry=${testSecret}`));
    const value = cookie.split('=')[1]!;
    const wrong = [
      `platewright-4173=${testSecret}`,
      `platewright-4173=${value.slice(0, -1)}`,
      `platewright-4173=${value}x`,
      'platewright-4173=',
      `platewright-4174=${value}`,
      `platewright=${value}`,
    ];
    for (const one of wrong) expect([one, (await get('/api/foods', { cookie: one })).status]).toEqual([one, 403]);
    expect((await get('/api/foods', { cookie: `other=1; ${cookie}` })).status).toBe(200);
    // The secret opens pages alone, and only when they are asked for.
    expect((await get(`/api/foods?entry=${testSecret}`)).status).toBe(403);
    const posted = await server.outside.request(`http://127.0.0.1:4173/?entry=${testSecret}`, {
      method: 'POST',
      headers: { host: '127.0.0.1:4173' },
    });
    expect([posted.status, posted.headers.get('set-cookie')]).toEqual([403, null]);
  });

  test('[SRV-42] a cookie does not stand for the origin, nor the origin for a cookie', async () => {
    const cookie = cookieOf(await get(`/?entry=${testSecret}`));
    const refused = await get('/api/foods', { cookie, origin: 'http://elsewhere.example' });
    expect([refused.status, ((await refused.json()) as { code: string }).code]).toEqual([403, 'origin-refused']);
    expect((await get(`/?entry=${testSecret}`, {}, 'elsewhere.example')).headers.get('set-cookie')).toBeNull();
    expect((await get('/api/foods', { origin: 'http://127.0.0.1:4173', 'sec-fetch-site': 'same-origin' })).status).toBe(403);
  });

  test('[SRV-42] the secret is in no log', () => {
    expect(server.logged.join('\n')).not.toContain(testSecret);
  });
});
