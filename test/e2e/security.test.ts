import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { program } from '../program.ts';
import { browserPath, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

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

describe.skipIf(process.getuid?.() !== 0)('another account of this computer (skipped for all but root, who alone may become one)', () => {
  const asking = fileURLToPath(new URL('otherAccount.fixture.ts', import.meta.url));
  const stranger = 54_321;
  type Got = { uid: number; answers: { path: string; status: number; cookie: string | null; text: string }[]; reads: object[] };
  /** Not waited for by blocking: the program that is asked is started from here. */
  const asStranger = (requests: readonly (readonly [string, string])[], paths: readonly string[]): Promise<Got> =>
    new Promise((done, failed) => {
      const child = spawn(process.execPath, [asking, String(stranger), workbench.address, JSON.stringify(requests), ...paths], {
        cwd: '/',
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      let text = '';
      child.stdout.on('data', chunk => {
        text += chunk;
      });
      child.once('error', failed);
      child.once('close', () => done(JSON.parse(text) as Got));
    });

  test('[SRV-42] is refused at every call, page and file, and learns nothing of foods or clients', { timeout: 60_000 }, async () => {
    const get = async <Body>(path: string): Promise<Body> => (await (await workbench.fetch(path)).json()) as Body;
    const { paths } = await get<{ paths: Record<string, object> }>('/api/openapi.json');
    const [food] = await get<{ id: string; name: string }[]>('/api/foods');
    const [client] = await get<{ id: string; name: string }[]>('/api/clients');
    const calls = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map(method => [method, path.replaceAll(/\{\w+\}/g, path.includes('clients') ? client!.id : food!.id)] as const),
    );
    const built = readdirSync(join(root, 'dist/web'), { recursive: true, encoding: 'utf8' }).map(name => `/${name.replaceAll('\\', '/')}`);
    const others = ['/', '/clients', '/?entry=guess', '/api', '/api/openapi.json', '/api/photos/x', '/api/client-previews/x', ...built];
    expect([calls.length > 60, built.length > 3]).toEqual([true, true]);
    const { uid, answers } = await asStranger([...calls, ...others.map(path => ['get', path] as const)], []);
    expect([uid, answers.length]).toEqual([stranger, calls.length + others.length]);
    for (const { path, status, cookie, text } of answers) {
      expect([path, status, cookie]).toEqual([path, 403, null]);
      expect(text, path).toMatch(/"code":"entry-refused"|<h1>Open the address that Platewright printed/);
      for (const known of [food!.name, client!.name]) expect(text, path).not.toContain(known);
    }
    expect((await workbench.fetch(`/api/foods/${food!.id}`)).status).toBe(200);
  });

  test('[SRV-43] may read no file of the data folder', async () => {
    const names = readdirSync(workbench.folder);
    expect(names).toContain('clients.sqlite-wal');
    const { reads } = await asStranger([], [workbench.folder, ...names.map(name => join(workbench.folder, name))]);
    expect(reads).toHaveLength(names.length + 1);
    for (const read of reads) expect(read).toMatchObject({ refused: 'EACCES' });
  });

  test('[SRV-41] does not see the secret among the running programs, nor in what they say', async () => {
    const secret = new URL(workbench.printed).searchParams.get('entry')!;
    expect(secret).toMatch(/^[\w-]{43}$/);
    const lines = readdirSync('/proc')
      .filter(name => /^\d+$/.test(name))
      .map(pid => join('/proc', pid, 'cmdline'));
    const { reads } = await asStranger([], lines);
    expect(JSON.stringify(reads)).not.toContain(secret);
    expect(JSON.stringify(reads)).toContain(program);
    expect(workbench.said()).not.toContain(secret);
  });
});

describe.skipIf(browserPath === undefined)('in a browser (skipped where no Chromium-family browser is installed)', () => {
  test('[SRV-41] [SRV-42] two profiles: the one that opened the printed address works, the other is told what to open', {
    timeout: 60_000,
  }, async () => {
    const browser = await launchBrowser();
    try {
      const [own, other] = await Promise.all([browser.newContext(), browser.newContext()]);
      const page = await own.newPage();
      await page.goto(workbench.printed);
      await page.getByRole('heading', { name: /^\d+ foods/ }).waitFor();
      expect(page.url()).toBe(`${workbench.address}/`);
      // The exchange leaves no step behind: what the back button leads to is the empty page before.
      expect(await page.evaluate('history.length')).toBeLessThanOrEqual(2);
      expect(await page.evaluate('document.cookie')).toBe('');
      const second = await own.newPage();
      await second.goto(`${workbench.address}/clients`);
      await second.getByRole('heading', { name: 'Clients', level: 1 }).waitFor();

      const outside = await other.newPage();
      const answer = await outside.goto(`${workbench.address}/clients`);
      expect(answer?.status()).toBe(403);
      await outside.getByRole('heading', { name: 'Open the address that Platewright printed when it was started' }).waitFor();
      for (const width of [1280, 390, 320]) {
        await outside.setViewportSize({ width, height: 700 });
        expect(await violationsOf(outside)).toEqual([]);
        expect(await outside.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      }
      await outside.goto(workbench.printed);
      await outside.getByRole('heading', { name: /^\d+ foods/ }).waitFor();

      // On the other name of this computer.
      const byName = await browser.newContext();
      const named = await byName.newPage();
      await named.goto(workbench.printed.replace('127.0.0.1', 'localhost'));
      await named.getByRole('heading', { name: /^\d+ foods/ }).waitFor();
    } finally {
      await browser.close();
    }
  });
});
