/** Feeds made-up and spoiled inputs to every reader and every route; what is told is what came out besides faults of the catalogue. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Fault } from '#core/errors.ts';
import { Chance } from './fuzz/chance.ts';
import { fileReaders } from './fuzz/fileReaders.ts';
import { jsonReaders } from './fuzz/jsonReaders.ts';
import type { Reader } from './fuzz/reader.ts';
import { fuzzRoutes } from './fuzz/routes.ts';
import { textReaders } from './fuzz/textReaders.ts';
import { longestMs, within } from './fuzz/within.ts';

export interface Crash {
  readonly reader: string;
  /** With the seed, what makes the same input again. */
  readonly input: number;
  readonly error: string;
  readonly given: string;
}

export interface Figures extends Record<string, unknown> {
  readonly inputs: Readonly<Record<string, number>>;
  readonly seed: number;
  readonly crashes: number;
  readonly fivexx: number;
  /** Answered or read in more than 5 seconds, or by nobody. */
  readonly hangs: number;
  readonly slowestMs: number;
  readonly slowest: string;
  readonly peakMb: number;
  readonly examples: readonly unknown[];
}

/** One input in twenty-five goes to the routes. */
const routeShare = 25;
const mostExamples = 40;

/** @param only the readers whose name begins so, or "routes" */
export async function fuzz(count: number, seed: number, only = ''): Promise<Figures> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-fuzz-'));
  const onDisk = await fileReaders(folder);
  const readers = [...jsonReaders, ...textReaders, ...onDisk.readers].filter(({ name }) => name.startsWith(only));
  const inputs: Record<string, number> = {};
  const crashes: Crash[] = [];
  let slowest = { ms: 0, what: '' };
  let hangs = 0;
  const requests = only === 'routes' ? count : only === '' ? Math.ceil(count / routeShare) : 0;
  try {
    for (let input = 0; input < count - requests; input += 1) {
      const chance = new Chance(seed, input);
      const reader = chosen(readers, chance);
      inputs[reader.name] = (inputs[reader.name] ?? 0) + 1;
      let given: unknown;
      const start = performance.now();
      try {
        const work = reader.read(chance, told => {
          given = told;
        });
        // Most readers answer at once: a timer for each of a million would cost more than they do.
        if (work instanceof Promise) await within(work);
      } catch (error) {
        if (!(error instanceof Fault) || error.code === 'program-fault')
          crashes.push({ reader: reader.name, input, error: shownError(error), given: shown(given) });
      }
      const ms = performance.now() - start;
      if (ms > slowest.ms) slowest = { ms, what: `${reader.name}, input ${input}` };
      if (ms > longestMs) hangs += 1;
    }
    const routes = requests === 0 ? undefined : await fuzzRoutes(requests, seed);
    if (routes !== undefined) inputs.routes = requests;
    if (routes !== undefined && routes.slowest.ms > slowest.ms) slowest = routes.slowest;
    return {
      inputs,
      seed,
      crashes: crashes.length,
      fivexx: routes?.fivexx ?? 0,
      hangs: hangs + (routes?.hangs ?? 0),
      slowestMs: Math.round(slowest.ms),
      slowest: slowest.what,
      peakMb: Math.round(process.resourceUsage().maxRSS / 1_024),
      ...(routes === undefined ? {} : { statuses: routes.statuses, unreadable: routes.unreadable }),
      examples: [...crashes.slice(0, mostExamples), ...(routes?.examples ?? []).slice(0, mostExamples)],
    };
  } finally {
    await onDisk.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function chosen(readers: readonly Reader[], chance: Chance): Reader {
  let at = chance.next() * readers.reduce((sum, { share }) => sum + share, 0);
  for (const reader of readers) {
    at -= reader.share;
    if (at < 0) return reader;
  }
  return readers.at(-1)!;
}

/** Where the project lies is nobody's business. */
const root = new URL('../../', import.meta.url);

function shownError(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const lines = (error.stack ?? error.message).split('\n').slice(0, 5);
  return lines.join(' | ').replaceAll(root.href, '').replaceAll(root.pathname, '');
}

function shown(given: unknown): string {
  const text =
    given instanceof Uint8Array ? Buffer.from(given).toString('base64') : typeof given === 'string' ? given : JSON.stringify(given);
  return (text ?? '').slice(0, 2_000);
}
