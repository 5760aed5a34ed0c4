/**
 * The long runs: `npm run test:long` does all of them, `npm run test:long -- kills --count 300 --seed 7` one. What came out of each is added
 * to docs/long-run.json with the seed, the commit, the machine and the seconds. Ends with 1 when something was found that must not be.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

interface Asked {
  readonly count: number | undefined;
  readonly seed: number;
  /** What else stands behind the name. */
  readonly named: readonly string[];
}
interface Ran {
  readonly figures: unknown;
  /** What must not be; empty when all is well. */
  readonly found: readonly string[];
}

const runs: Readonly<Record<string, (asked: Asked) => Promise<Ran>>> = {
  tests: async ({ seed, named }) => (await import('./everyTest.ts')).everyTest(seed, named),
  mutation: async ({ count = 500, seed, named: [only] }) => {
    const figures = await (await import('./mutation.ts')).mutation(count, seed, only);
    return { figures, found: figures.score < 0.85 ? ['the tests notice fewer than 85 of 100 mutants'] : [] };
  },
  kills: async ({ count = 300, seed, named }) => (await import('./kills.ts')).kills(count, seed, named),
  archive: async ({ count = 100_000 }) => {
    const figures = await (await import('./bigArchive.ts')).bigArchive(count, 500, 5_000_000);
    return { figures, found: figures.isEqual ? [] : ['what came back is not what went out'] };
  },
  fuzz: async ({ count = 1_000_000, seed, named: [only] }) => {
    const { examples, ...figures } = await (await import('./fuzz.ts')).fuzz(count, seed, only);
    return { figures, found: examples.map(example => JSON.stringify(example).slice(0, 1_500)) };
  },
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { count: { type: 'string' }, seed: { type: 'string', default: '7' } },
});
const [what, ...named] = positionals;
if (what !== undefined && !Object.hasOwn(runs, what)) {
  process.stderr.write(`Expected one of ${Object.keys(runs).join(', ')}, found "${what}".\n`);
  process.exit(1);
}
for (const one of what === undefined ? Object.keys(runs) : [what]) await add(one);

/** Runs it and writes down what came out. */
async function add(name: string): Promise<void> {
  const seed = Number(values.seed);
  const at = new Date().toISOString();
  const commit = commitNow();
  const start = performance.now();
  const { figures, found } = await runs[name]!({ count: values.count === undefined ? undefined : Number(values.count), seed, named });
  const seconds = Math.round((performance.now() - start) / 1_000);
  const machine = {
    cores: cpus().length,
    memoryGb: Math.round(totalmem() / 2 ** 30),
    node: process.versions.node,
    load: Math.round(loadavg()[2]!),
  };
  const file = fileURLToPath(new URL('../../docs/long-run.json', import.meta.url));
  const kept: unknown[] = JSON.parse(readFileSync(file, 'utf8'));
  const entry = { what: [name, ...named].join(' '), seed, commit, at, seconds, machine, figures, ...(found.length === 0 ? {} : { found }) };
  writeFileSync(file, `${JSON.stringify([...kept, entry], undefined, 2)}\n`);
  process.stdout.write(`${JSON.stringify(entry, undefined, 2)}\n`);
  if (found.length > 0) process.exitCode = 1;
}

/** With a plus where files differ from it. */
function commitNow(): string {
  const git = (...args: string[]): string => execFileSync('git', args, { encoding: 'utf8' }).trim();
  return `${git('rev-parse', 'HEAD')}${git('status', '--porcelain', '--', 'src', 'test', 'package.json') === '' ? '' : '+'}`;
}
