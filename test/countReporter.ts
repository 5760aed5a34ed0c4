import type { Reporter, TestModule } from 'vitest/node';

/**
 * Ends every run with one plain line that any machine can read: `N passed, N failed`, and skips when there are any. Where
 * PLATEWRIGHT_ALLOW_NO_SKIP is set, a skipped test fails the run: a check that cannot run must not look like one that passed.
 */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    let passed = 0;
    let failed = unhandledErrors.length;
    const skipped: string[] = [];
    for (const module of modules) {
      // What a suite does before its tests may fail: then none of them is run.
      for (const suite of [module, ...module.children.allSuites()]) if (suite.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped.push(test.fullName);
      }
    }
    const mayNotSkip = process.env.PLATEWRIGHT_ALLOW_NO_SKIP !== undefined && skipped.length > 0;
    process.on('exit', () => {
      if (skipped.length > 0) process.stdout.write(`\nSkipped:\n${skipped.map(name => `  ${name}\n`).join('')}`);
      if (mayNotSkip) {
        process.exitCode = 1;
        failed += skipped.length;
      }
      process.stdout.write(
        `\n${passed} passed, ${failed} failed${skipped.length > 0 && !mayNotSkip ? `, ${skipped.length} skipped` : ''}\n`,
      );
    });
  }
}
