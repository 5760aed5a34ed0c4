import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { browserPart } from './browserPart.ts';

const root = mkdtempSync(join(tmpdir(), 'platewright-root-'));
afterEach(() => rmSync(root, { recursive: true, force: true }));

test('[REL-1] a packed release brings it along: nothing is built', async () => {
  mkdirSync(join(root, 'web'), { recursive: true });
  writeFileSync(join(root, 'web/index.html'), '<!doctype html><title>Brought</title>');
  const said: string[] = [];
  expect(await browserPart(root, text => said.push(text))).toBe(join(root, 'web'));
  expect([said, readdirSync(root)]).toEqual([[], ['web']]);
});

test('[SRV-48] the browser part is built whole, wherever the program was started, and again when anything that it is made of is another', async () => {
  mkdirSync(join(root, 'src/web'), { recursive: true });
  writeFileSync(join(root, 'vite.config.ts'), "export default { root: 'src/web' };");
  const page = join(root, 'src/web/index.html');
  writeFileSync(page, '<!doctype html><title>One</title>');
  // A build that was killed: of a program that is gone, a number that no system gives.
  mkdirSync(join(root, 'dist/web.building-999999999-abcdef'), { recursive: true });
  const said: string[] = [];
  const built = await browserPart(root, text => said.push(text));
  expect(readFileSync(join(built, 'index.html'), 'utf8')).toContain('One');
  expect(readdirSync(join(root, 'dist'))).toEqual(['web', 'web.made-of']);
  await browserPart(root, text => said.push(text));
  expect(said).toHaveLength(1);
  // The time says nothing: a checkout gives old sources new times, and the other way round.
  utimesSync(page, new Date(), new Date(Date.now() + 60_000));
  await browserPart(root, text => said.push(text));
  expect(said).toHaveLength(1);
  writeFileSync(page, '<!doctype html><title>Two</title>');
  utimesSync(page, new Date(0), new Date(0));
  await browserPart(root, text => said.push(text));
  expect(readFileSync(join(built, 'index.html'), 'utf8')).toContain('Two');
  mkdirSync(join(root, 'src/core'));
  writeFileSync(join(root, 'src/core/a.ts'), 'export const a = 1;');
  await browserPart(root, text => said.push(text));
  expect([said.length, existsSync(join(root, 'dist/web'))]).toEqual([3, true]);
}, 60_000);

test('[SRV-48] whoever starts the program, what is built is for use', async () => {
  // The runner of the tests says "test" here, and the builder would listen to it.
  expect(process.env.NODE_ENV).toBe('test');
  mkdirSync(join(root, 'src/web'), { recursive: true });
  writeFileSync(join(root, 'vite.config.ts'), "export default { root: 'src/web', build: { minify: false } };");
  writeFileSync(join(root, 'src/web/index.html'), '<!doctype html><title>One</title><script type="module" src="/main.js"></script>');
  writeFileSync(join(root, 'src/web/main.js'), 'document.title = process.env.NODE_ENV;');
  const built = await browserPart(root, () => undefined);
  const scripts = readdirSync(join(built, 'assets')).map(name => readFileSync(join(built, 'assets', name), 'utf8'));
  expect(scripts.join('')).toContain('"production"');
  expect(process.env.NODE_ENV).toBe('test');
}, 60_000);

test('[SRV-48] programs that start at the same time each find it whole', async () => {
  mkdirSync(join(root, 'src/web'), { recursive: true });
  writeFileSync(join(root, 'vite.config.ts'), 'export default {};');
  writeFileSync(join(root, 'src/web/index.html'), '<!doctype html><title>One</title><script type="module" src="/main.js"></script>');
  writeFileSync(join(root, 'src/web/main.js'), 'document.title = "Two";');
  const built = await Promise.all([1, 2, 3, 4, 5, 6].map(() => browserPart(root, () => undefined)));
  expect(new Set(built)).toEqual(new Set([join(root, 'dist/web')]));
  expect(readFileSync(join(built[0]!, 'index.html'), 'utf8')).toContain('One');
  expect(readdirSync(join(root, 'dist'))).toEqual(['web', 'web.made-of']);
}, 60_000);
