import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
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
  try {
    const call = await entered(await printedAddress(program.stdout));
    const [food] = z.array(z.object({ id: z.string() })).parse(await (await call('/api/foods')).json());
    const reads = ['/api/workspace', '/api/clients/lock', '/api/plates', `/api/foods/${food!.id}`];
    const table = manyLabels(rows);
    const send = (path: string) => {
      const form = new FormData();
      form.set('file', new File([table], 'many.csv'));
      return call(path, { method: 'POST', body: form }).then(answer => answer.json());
    };
    tell('while idle (yardstick)', await during(() => setTimeout(10_000), reads, call));
    tell(`while ${rows.toLocaleString('en-US')} rows are looked at`, await during(() => send('/api/imports/look'), reads, call));
    tell(`while ${rows.toLocaleString('en-US')} rows are kept`, await during(() => send('/api/imports'), reads, call));
    tell(
      'while the shelf is read anew behind it',
      await during(() => call('/api/foods?search=zzz').then(answer => answer.json()), reads, call),
    );
  } finally {
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

/** Opens the printed address as a browser does and keeps the cookie, where there is one. */
async function entered(address: URL): Promise<Call> {
  const first = await fetch(address, { redirect: 'manual' });
  const cookie = first.headers.getSetCookie().map(one => one.split(';')[0]!);
  const headers = { origin: address.origin, ...(cookie.length === 0 ? {} : { cookie: cookie.join('; ') }) };
  return (path, init = {}) => fetch(new URL(path, address), { ...init, headers });
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

/** The labels of the demo again and again, each a food of its own: names and bar codes with their check digits are invented. */
function manyLabels(rows: number): string {
  const { data, meta } = Papa.parse<Record<string, string>>(readFileSync(join(root, 'data/demo/labels.csv'), 'utf8').trimEnd(), {
    header: true,
  });
  const made = Array.from({ length: rows }, (_, at) => {
    const label = data[at % data.length]!;
    return { ...label, id: `${label.id}-${at}`, name: `${label.name} ${at}`, category: `bench ${at % 40}`, gtin: gtin(at) };
  });
  return Papa.unparse(made, { columns: meta.fields ?? [] });
}

/** GS1 General Specifications, section 7.9: the check digit of weights 3 and 1 from the right. */
function gtin(at: number): string {
  const digits = `4199${String(at).padStart(7, '0')}`;
  const sum = [...digits].reverse().reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return `${digits}${(10 - (sum % 10)) % 10}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await benchBusy();
