/** A Vitest that stays: it runs test files again and again, with sources as they are handed to it. */
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVitest, type TestModule, type Vitest } from 'vitest/node';

export const root = fileURLToPath(new URL('../../../', import.meta.url));

export interface Ran {
  /** What is wrong; empty when the tests pass. */
  readonly failures: readonly string[];
  readonly milliseconds: number;
}

export class TestRunner {
  private readonly vitest: Vitest;
  private readonly sources: Map<string, string>;

  private constructor(vitest: Vitest, sources: Map<string, string>) {
    this.vitest = vitest;
    this.sources = sources;
  }

  /** Each test file gets a worker of its own, so that nothing stays of the one before; and no source is kept beyond it. */
  static async start(setupFiles: readonly string[] = []): Promise<TestRunner> {
    const sources = new Map<string, string>();
    // As the command sets it; without, the builder takes it for development.
    process.env.NODE_ENV = 'test';
    const vitest = await createVitest(
      {
        config: false,
        root,
        watch: false,
        pool: 'threads',
        isolate: true,
        maxWorkers: 1,
        fsModuleCache: false,
        bail: 1,
        testTimeout: 120_000,
        reporters: [{}],
        setupFiles: [`${root}test/seed.ts`, ...setupFiles],
      },
      { plugins: [{ name: 'sources', enforce: 'pre', transform: (_, id) => sources.get(relative(root, id)) }] },
    );
    await vitest.standalone();
    return new TestRunner(vitest, sources);
  }

  /** From now on a file below the root is read as `source`; undefined: as it stands on the disk. */
  put(file: string, source: string | undefined): void {
    if (source === undefined) this.sources.delete(file);
    else this.sources.set(file, source);
    this.vitest.invalidateFile(`${root}${file}`);
  }

  /** @param file of tests, below the root */
  async run(file: string): Promise<Ran> {
    const specification = this.vitest.getRootProject().createSpecification(`${root}${file}`);
    const { testModules, unhandledErrors } = await this.vitest.runTestSpecifications([specification]);
    // It tells of those that it ran before as well.
    const module = testModules.find(({ moduleId }) => moduleId === specification.moduleId);
    if (module === undefined) return { failures: ['no such file'], milliseconds: 0 };
    const { duration, collectDuration } = module.diagnostic();
    return {
      failures: [...unhandledErrors.map(String), ...(module.ok() ? [] : failuresOf(module))],
      milliseconds: duration + collectDuration,
    };
  }

  async close(): Promise<void> {
    await this.vitest.close();
  }
}

function failuresOf(module: TestModule): readonly string[] {
  const inTests = [...module.children.allTests('failed')].map(test => `${test.fullName}: ${test.result().errors?.[0]?.message}`);
  return [`${module.relativeModuleId} fails`, ...module.errors().map(({ message }) => message), ...inTests];
}
