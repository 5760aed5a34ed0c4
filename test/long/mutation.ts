/** How many small mistakes in src/core the tests notice: a sample of all that can be made by the rules of `mutants.ts`. */
import { globSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { basename, dirname } from 'node:path';
import { parseSync } from 'oxc-parser';
import { quick } from '../../vitest.config.ts';
import { Chance } from './fuzz/chance.ts';
import { type Mutant, mutantsOf, mutated } from './mutation/mutants.ts';
import { reachedBy } from './mutation/reachedBy.ts';
import { root } from './mutation/testRunner.ts';
import { MutantTrier, type Outcome } from './mutation/tryMutant.ts';

export interface MutationFigures {
  readonly mutants: number;
  readonly sampled: number;
  readonly noticed: number;
  /** Noticed as well: no test came to its end. */
  readonly endless: number;
  readonly survived: number;
  /** Of those that survived: no test comes to the place. */
  readonly notReached: number;
  readonly score: number;
  /** 95 % (Wilson 1927). */
  readonly interval: readonly [number, number];
  readonly survivors: readonly string[];
}

/** @param only the beginning of the paths of a part: its mutants by its own tests, which is stricter than by all */
export async function mutation(count: number, seed: number, only?: string): Promise<MutationFigures> {
  const sources = globSync('src/core/**/*.ts', { cwd: root }).filter(
    file => file.startsWith(only ?? '') && !/\.test\.|fixture/i.test(file),
  );
  const all = sources.sort().flatMap(file => mutantsOf(file, readFileSync(`${root}${file}`, 'utf8')));
  const mutants = sampled(all, count, seed);
  checkReadable(mutants);
  // A generated case that notices a mutant by chance would make another score of the same sample.
  process.env.PLATEWRIGHT_SEED = String(seed);
  const testFiles = globSync(quick.include, { cwd: root, exclude: quick.exclude }).filter(file => file.startsWith(only ?? ''));
  const { tests, milliseconds } = await reachedBy(mutants, testFiles.sort());
  const outcomes: Outcome[] = [];
  const waiting = [...mutants.entries()];
  const tryAll = async (): Promise<void> => {
    const trier = new MutantTrier(milliseconds);
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [number, mutant] = next;
      outcomes[number] = await trier.try(mutant, nearestFirst(mutant, tests[number]!, milliseconds));
      process.stderr.write(
        `${outcomes.filter(outcome => outcome !== undefined).length} of ${mutants.length}: ${outcomes[number]} ${told(mutant)}\n`,
      );
    }
    trier.close();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, tryAll));
  const of = (outcome: Outcome): number => outcomes.filter(one => one === outcome).length;
  const survivors = [...mutants.entries()].filter(([number]) => outcomes[number] === 'survived');
  return {
    mutants: all.length,
    sampled: mutants.length,
    noticed: of('noticed'),
    endless: of('endless'),
    survived: survivors.length,
    notReached: survivors.filter(([number]) => tests[number]!.length === 0).length,
    score: rounded(1 - survivors.length / mutants.length),
    interval: wilson(mutants.length - survivors.length, mutants.length),
    survivors: survivors.map(([, mutant]) => told(mutant)),
  };
}

/** One that cannot be read would count as noticed. @throws where there is one */
function checkReadable(mutants: readonly Mutant[]): void {
  for (const mutant of mutants) {
    const { errors } = parseSync(mutant.file, mutated(readFileSync(`${root}${mutant.file}`, 'utf8'), mutant));
    if (errors.length > 0) throw new Error(`the mutant cannot be read: ${told(mutant)}: ${errors[0]!.message}`);
  }
}

/** Each as likely as any other, none twice. */
function sampled(all: readonly Mutant[], count: number, seed: number): Mutant[] {
  const chance = new Chance(seed, 0);
  const left = [...all];
  return Array.from({ length: Math.min(count, all.length) }, () => left.splice(chance.below(left.length), 1)[0]!);
}

/** The file of tests that is named as the source, then those of its folder, then the shortest. */
function nearestFirst({ file }: Mutant, tests: readonly string[], milliseconds: ReadonlyMap<string, number>): readonly string[] {
  const distance = (test: string): number =>
    basename(test, '.test.ts') === basename(file, '.ts') ? 0 : dirname(test) === dirname(file) ? 1 : 2;
  return tests.toSorted((one, other) => distance(one) - distance(other) || milliseconds.get(one)! - milliseconds.get(other)!);
}

function told({ file, line, kind, start, end, replacement }: Mutant): string {
  const short = (text: string): string => text.replaceAll(/\s+/g, ' ').slice(0, 120);
  return `${file}:${line} ${kind}: ${short(readFileSync(`${root}${file}`, 'utf8').slice(start, end))} → ${short(replacement)}`;
}

const rounded = (share: number): number => Math.round(share * 1_000) / 1_000;

function wilson(yes: number, of: number): readonly [number, number] {
  const z = 1.96;
  const share = yes / of;
  const middle = share + (z * z) / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const whole = 1 + (z * z) / of;
  return [rounded((middle - half) / whole), rounded((middle + half) / whole)];
}
