/**
 * `npm run dev`: the program with a workspace of its own, begun anew when one of its sources changes, behind a page whose parts change in
 * place. Only for working on Platewright: whoever is on this computer may open the page while it runs, so there is nothing in it but the demo.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer as createNetServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { createServer } from 'vite';

const root = join(import.meta.dirname, '..');
const workspace = process.env.PLATEWRIGHT_DATA ?? mkdtempSync(join(tmpdir(), 'platewright-dev-'));
const port = await freePort();
const origin = `http://127.0.0.1:${port}`;
/** What lets in since the program's last start. */
let cookie = '';

const page = await createServer({
  configFile: join(root, 'vite.config.ts'),
  root: join(root, 'src', 'web'),
  server: {
    host: '127.0.0.1',
    port: Number(process.env.PORT ?? 4174),
    proxy: {
      '^/api/': {
        target: origin,
        configure: proxy => {
          proxy.on('proxyReq', request => {
            for (const [name, value] of Object.entries({ host: new URL(origin).host, origin, cookie })) request.setHeader(name, value);
          });
        },
      },
    },
  },
});
await page.listen();

/** Not by `node --watch`: that sends words of its own from threads, between the words of ours. */
const isOfProgram = /^(?:src\/(?:adapters|app|cli|core|server)|data)\//;
let running = started();
let pause: NodeJS.Timeout | undefined;
page.watcher.add(['src', 'data'].map(folder => join(root, folder)));
page.watcher.on('all', (_, path) => {
  if (!isOfProgram.test(relative(root, path).replaceAll('\\', '/')) || path.includes('.test.')) return;
  clearTimeout(pause);
  pause = setTimeout(() => {
    running.once('exit', () => {
      running = started();
    });
    running.kill();
  }, 100);
});

function started(): ChildProcess {
  const child = spawn(process.execPath, [join(root, 'src', 'cli', 'main.ts'), 'start'], {
    env: { ...process.env, PORT: String(port), PLATEWRIGHT_DATA: workspace },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  child.stdout.on('data', async piece => {
    const [printed] = /http:\/\/\S+\?entry=\S+/.exec(String(piece)) ?? [];
    if (printed === undefined) return;
    const entered = await fetch(printed, { redirect: 'manual' });
    cookie = entered.headers
      .getSetCookie()
      .map(one => one.split(';')[0])
      .join('; ');
    page.ws.send({ type: 'full-reload' });
    page.printUrls();
  });
  return child;
}

for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, async () => {
    running.kill(signal);
    await page.close();
    if (process.env.PLATEWRIGHT_DATA === undefined) rmSync(workspace, { recursive: true, force: true });
    process.exit();
  });

function freePort(): Promise<number> {
  return new Promise(found => {
    const probe = createNetServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => found(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
