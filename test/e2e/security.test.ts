import { request } from 'node:http';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { removeFolder, startWorkbench, type Workbench } from './workbench.ts';

// The running program over a real socket: what a page elsewhere could try (docs/rules/server.md, SRV-1 to SRV-3).
let workbench: Workbench;
beforeAll(async () => {
  workbench = await startWorkbench();
}, 120_000);
afterAll(async () => {
  await workbench?.stop();
  if (workbench !== undefined) removeFolder(workbench.folder);
});

function ask(path: string, method: string, headers: Record<string, string>): Promise<{ status: number; policy: string; body: string }> {
  return new Promise((done, failed) => {
    const asked = request(`${workbench.address}${path}`, { method, headers: { cookie: workbench.cookie, ...headers } }, answer => {
      let body = '';
      answer.on('data', chunk => {
        body += chunk;
      });
      answer.on('end', () => done({ status: answer.statusCode ?? 0, policy: String(answer.headers['content-security-policy']), body }));
    });
    asked.on('error', failed);
    asked.end();
  });
}

test('[SRV-1] a name that was made to point here is refused', async () => {
  const { port } = new URL(workbench.address);
  expect(await ask('/', 'GET', { host: `rebound.example:${port}` })).toMatchObject({ status: 403 });
  expect(await ask('/api/clients/export', 'GET', { host: `rebound.example:${port}` })).toMatchObject({
    status: 403,
    body: expect.stringContaining('origin-refused'),
  });
  expect(await ask('/api/workspace', 'GET', { host: `localhost:${port}` })).toMatchObject({ status: 200 });
});

test('[SRV-2] a post from another page is refused', async () => {
  const { host } = new URL(workbench.address);
  expect(await ask('/api/demo', 'DELETE', { host, origin: 'http://elsewhere.example' })).toMatchObject({ status: 403 });
  expect(await ask('/api/demo', 'DELETE', { host, 'sec-fetch-site': 'cross-site' })).toMatchObject({ status: 403 });
});

test('[SRV-3] the page and its files carry the policy, and nothing outside the built folder is served', async () => {
  const { host } = new URL(workbench.address);
  for (const path of ['/', '/foods/x', '/favicon.svg', '/api/workspace']) {
    expect((await ask(path, 'GET', { host })).policy, path).toContain("default-src 'none'; script-src 'self'; style-src 'self'");
  }
  const page = await ask('/', 'GET', { host });
  expect(page.body).not.toMatch(/<style|<script(?![^>]*src=)|style="|https?:\/\//);
  for (const path of ['/../../package.json', '/%2e%2e/%2e%2e/package.json', '/assets/..%2f..%2f..%2fpackage.json']) {
    expect((await ask(path, 'GET', { host })).body, path).not.toContain('"platewright"');
  }
});
