/**
 * The long runs, each by its name: `npm run long -- kills --count 300 --seed 7`, `npm run long -- archive`. What was found is added to
 * docs/long-run.json with the seed, the commit and the machine. Ends with 1 when something was found that must not be.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
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
const [what = '', ...named] = positionals;
const run = runs[what];
if (run === undefined) {
  process.stderr.write(`Expected one of ${Object.keys(runs).join(', ')}, found "${what}".\n`);
  process.exit(1);
}
const seed = Number(values.seed);
const at = new Date().toISOString();
const commit = commitNow();
const { figures, found } = await run({ count: values.count === undefined ? undefined : Number(values.count), seed, named });
const machine = { cores: cpus().length, memoryGb: Math.round(totalmem() / 2 ** 30), node: process.versions.node };
const file = fileURLToPath(new URL('../../docs/long-run.json', import.meta.url));
const kept: unknown[] = JSON.parse(readFileSync(file, 'utf8'));
const entry = { what: [what, ...named].join(' '), seed, commit, at, machine, figures, ...(found.length === 0 ? {} : { found }) };
writeFileSync(file, `${JSON.stringify([...kept, entry], undefined, 2)}\n`);
process.stdout.write(`${JSON.stringify(entry, undefined, 2)}\n`);
if (found.length > 0) process.exitCode = 1;

/** With a plus where files differ from it. */
function commitNow(): string {
  const git = (...args: string[]): string => execFileSync('git', args, { encoding: 'utf8' }).trim();
  return `${git('rev-parse', 'HEAD')}${git('status', '--porcelain', '--', 'src', 'test', 'package.json') === '' ? '' : '+'}`;
}
