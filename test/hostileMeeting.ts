/** A hostile file meets the real program, which is asked other things meanwhile. */
import { readFileSync, writeFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import type { HostileArchive } from '#adapters/archive/hostile/archiveOf.fixture.ts';
import type { Workbench } from './e2e/workbench.ts';

export interface Met {
  readonly name: string;
  readonly gave: string;
  readonly clients: string | undefined;
  /** Of the whole program: a machine that is busy with other things does not count. */
  readonly cpuSeconds: number;
  readonly wallSeconds: number;
  readonly peakMb: number;
  /** Milliseconds until the program told how much is in the workspace, while it worked. */
  readonly answers: readonly number[];
  /** What did not answer afterwards. */
  readonly broken: readonly string[];
}

/** @returns what it gave, and what that cost */
export async function measured(
  { pid, fetch }: Workbench,
  work: () => Promise<string>,
): Promise<Pick<Met, 'gave' | 'cpuSeconds' | 'wallSeconds' | 'peakMb' | 'answers'>> {
  // The peak begins anew.
  writeFileSync(`/proc/${pid}/clear_refs`, '5');
  const [cpu, wall] = [cpuSeconds(pid), performance.now()];
  const answers: number[] = [];
  let isDone = false;
  const asking = (async () => {
    while (!isDone) {
      const start = performance.now();
      const response = await fetch('/api/workspace');
      await response.arrayBuffer();
      answers.push(response.status === 200 ? performance.now() - start : Number.POSITIVE_INFINITY);
      await setTimeout(20);
    }
  })();
  const gave = await work();
  const spent = { cpuSeconds: cpuSeconds(pid) - cpu, wallSeconds: (performance.now() - wall) / 1_000 };
  isDone = true;
  await asking;
  const peakKb = Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
  return { gave, ...spent, peakMb: Math.round(peakKb / 1_024), answers };
}

/** Looks at an archive and restores it into an empty workspace, with its client records; then opens what a person would. */
export async function meet(workbench: Workbench, { name, make, clients }: HostileArchive): Promise<Met> {
  const bytes = make();
  await emptied(workbench);
  let withClients: string | undefined;
  const figures = await measured(workbench, async () => {
    const brought = await call(workbench, 'POST', '/archives/brought', bytes);
    if (brought.status !== 200) return brought.code;
    const restore = async (withTheirs: boolean) =>
      call(workbench, 'POST', `/archives/${brought.id}/restore`, { into: 'empty', withClients: withTheirs, passphrase: 'x' });
    if (clients === undefined) return (await restore(false)).code;
    const all = await restore(true);
    withClients = all.code;
    return all.status === 200 ? all.code : (await restore(false)).code;
  });
  return { name, ...figures, clients: withClients, broken: await brokenScreens(workbench) };
}

async function emptied(workbench: Workbench): Promise<void> {
  await call(workbench, 'DELETE', '/workspace', { confirm: 'delete everything' });
  await call(workbench, 'DELETE', '/clients', { confirm: 'erase every client' });
}

/** Everything that is asked for by the screens of foods, labels, guides and the data; what answers 5xx or late. */
async function brokenScreens(workbench: Workbench): Promise<readonly string[]> {
  const broken: string[] = [];
  const ask = async (method: string, path: string, body?: unknown) => {
    const start = performance.now();
    const answer = await call(workbench, method, path, body);
    const ms = performance.now() - start;
    if (answer.status >= 500 || ms > 30_000)
      broken.push(`${method} ${path.slice(0, 80)}: ${answer.status} ${answer.code} after ${Math.round(ms)} ms`);
    return answer;
  };
  for (const path of [
    '/workspace',
    '/workspace/damaged',
    '/plates',
    '/yardsticks',
    '/surveys',
    '/guides',
    '/handouts',
    '/imports',
    '/references',
    '/clients',
    '/clients/health',
    '/clients/export',
  ])
    await ask('GET', path);
  for (const path of ['/', '/foods', '/data']) if ((await workbench.fetch(path)).status !== 200) broken.push(path);
  const { json: foods } = await ask('GET', '/foods');
  for (const food of (Array.isArray(foods) ? foods : []).slice(0, 12)) {
    const { json } = await ask('GET', `/foods/${encodeURIComponent(String(food.id).toWellFormed())}`);
    for (const { photoIds } of Array.isArray(json?.labels) ? json.labels : []) {
      for (const id of photoIds ?? []) {
        const picture = await workbench.fetch(`/api/photos/${encodeURIComponent(id)}`);
        const type = picture.headers.get('content-type') ?? '';
        if (picture.status === 200 && !/^image\/(png|jpeg|webp)$/.test(type)) broken.push(`a picture answers ${type}`);
        if (picture.status === 200 && (await picture.text()).includes('<script>')) broken.push('a picture answers a script');
      }
    }
  }
  const survey = { category: 'soups and broths', plate: 'on-its-own', yardstick: 'low-in-sodium-as-eaten' };
  await ask('POST', '/survey', survey);
  await ask('POST', '/foods', {
    label: { name: 'New', category: 'soups and broths', market: 'us', basis: 'per-serving', panel: { sodiumMg: 1 } },
  });
  await ask('POST', '/archives', { withClients: false });
  return broken;
}

async function call(workbench: Workbench, method: string, path: string, body?: unknown) {
  const isBytes = body instanceof Uint8Array;
  const sent = isBytes ? new Uint8Array(body) : JSON.stringify(body);
  const response = await workbench.fetch(`/api${path}`, {
    method,
    ...(body === undefined ? {} : { body: sent, headers: { 'content-type': isBytes ? 'application/octet-stream' : 'application/json' } }),
  });
  const text = await response.text();
  // biome-ignore lint/suspicious/noExplicitAny: looks into answers of every shape
  const json: any = /^[[{]/.test(text) ? JSON.parse(text) : undefined;
  return { status: response.status, json, id: json?.id as string, code: response.status === 200 ? 'restored' : String(json?.code) };
}

/** Of all threads (proc(5): utime and stime, in hundredths of a second). */
function cpuSeconds(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}
