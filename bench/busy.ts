import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { z } from 'zod';
import { figure } from './measure.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const everyMs = 20;

/** Small reads of the real program while nothing else happens, while 50,000 labels are looked at, and while they are kept. */
export async function benchBusy(rows = 50_000): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const program = spawn(process.execPath, [join(root, 'src/cli/main.ts'), 'start'], {
    env: { ...process.env, PORT: process.env.PORT ?? '0', PLATEWRIGHT_DATA: folder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const sender = new Worker(new URL('./busySender.ts', import.meta.url), { workerData: rows });
  const isMade = once(sender, 'message');
  try {
    const address = await printedAddress(program.stdout);
    const headers = await entered(address);
    const call: Call = (path, init = {}) => fetch(new URL(path, address), { ...init, headers });
    const [food] = z.array(z.object({ id: z.string() })).parse(await (await call('/api/foods')).json());
    const reads = ['/api/workspace', '/api/clients/lock', '/api/plates', `/api/foods/${food!.id}`];
    await isMade;
    // On a thread of its own: what holds up the sender must not count as an answer that is late.
    const send = async (path: string): Promise<void> => {
      sender.postMessage({ url: new URL(path, address).href, headers });
      const [status] = await once(sender, 'message');
      if (status !== 200) throw new Error(`${path} answered ${status}`);
    };
    tell('while idle (yardstick)', await during(() => setTimeout(10_000), reads, call));
    tell(`while ${rows.toLocaleString('en-US')} rows are looked at`, await during(() => send('/api/imports/look'), reads, call));
    tell(`while ${rows.toLocaleString('en-US')} rows are kept`, await during(() => send('/api/imports'), reads, call));
    tell(
      'while the shelf is read anew behind it',
      await during(() => call('/api/foods?search=zzz').then(answer => answer.json()), reads, call),
    );
  } finally {
    await sender.terminate();
    program.kill();
    await new Promise(done => program.once('exit', done));
    rmSync(folder, { recursive: true, force: true });
  }
}

type Call = (path: string, init?: RequestInit) => Promise<Response>;

async function printedAddress(out: AsyncIterable<Uint8Array>): Promise<URL> {
  let printed = '';
  for await (const piece of out) {
    printed += Buffer.from(piece).toString();
    const address = /http:\/\/\S+/.exec(printed)?.[0];
    if (address !== undefined) return new URL(address);
  }
  throw new Error('the program ended before it printed an address');
}

/** Opens the printed address as a browser does and gives the cookie back, as headers. */
async function entered(address: URL): Promise<Readonly<Record<string, string>>> {
  const first = await fetch(address, { redirect: 'manual' });
  const cookie = first.headers.getSetCookie().map(one => one.split(';')[0]!);
  return { origin: address.origin, cookie: cookie.join('; ') };
}

interface Told {
  readonly seconds: number;
  readonly milliseconds: readonly number[];
}

/** Asks one read after the other, each at its moment whether the last has been answered or not. */
async function during(work: () => Promise<unknown>, reads: readonly string[], call: Call): Promise<Told> {
  const asked: Promise<number>[] = [];
  let isDone = false;
  const start = performance.now();
  const worked = work().finally(() => {
    isDone = true;
  });
  for (let at = 0; !isDone; at += 1) {
    const begun = performance.now();
    const path = reads[at % reads.length]!;
    const read = call(path).then(async answer => {
      await answer.arrayBuffer();
      if (!answer.ok) throw new Error(`${path} answered ${answer.status}`);
      return performance.now() - begun;
    });
    // Told below, when all have been asked: a read that fails must not end the bench before the program that it started.
    read.catch(() => undefined);
    asked.push(read);
    await setTimeout(everyMs);
  }
  await worked;
  const seconds = (performance.now() - start) / 1000;
  return { seconds, milliseconds: (await Promise.all(asked)).sort((a, b) => a - b) };
}

function tell(when: string, { seconds, milliseconds }: Told): void {
  const share = (of: number): number => milliseconds[Math.min(milliseconds.length - 1, Math.floor(milliseconds.length * of))] ?? 0;
  figure(`small reads ${when}: seconds`, seconds, `${milliseconds.length} reads`);
  figure('  p50, milliseconds', share(0.5), '');
  figure('  p99, milliseconds', share(0.99), 'under 200');
  figure('  longest, milliseconds', milliseconds.at(-1) ?? 0, '');
}
