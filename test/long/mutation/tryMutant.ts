/** Tries mutants one after the other in a program of its own, which is begun anew after one that never ends. */
import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Mutant } from './mutants.ts';
import type { Task, Told } from './mutation.fixture.ts';

const program = fileURLToPath(new URL('mutation.fixture.ts', import.meta.url));
/** A file of tests that takes so much longer than without a mutant never ends; a machine that is busy does not count. */
const patienceMilliseconds = 60_000;
const patienceTimes = 10;

export type Outcome = 'noticed' | 'endless' | 'survived';

export class MutantTrier {
  private readonly milliseconds: ReadonlyMap<string, number>;
  private child: ChildProcess | undefined;

  /** @param milliseconds that each file of tests takes without a mutant */
  constructor(milliseconds: ReadonlyMap<string, number>) {
    this.milliseconds = milliseconds;
  }

  try(mutant: Mutant, tests: readonly string[], isAgain = false): Promise<Outcome> {
    this.child ??= fork(program, { stdio: ['ignore', 'ignore', 'pipe', 'ipc'] });
    const { child } = this;
    return new Promise((done, failed) => {
      let patience: NodeJS.Timeout | undefined;
      let said = '';
      const end = (outcome: Outcome): void => {
        clearTimeout(patience);
        child.removeAllListeners();
        child.stderr?.removeAllListeners('data');
        done(outcome);
      };
      child.stderr?.on('data', chunk => {
        said += chunk;
      });
      child.on('message', (told: Told) => {
        clearTimeout(patience);
        if (!('begins' in told)) return end(told.noticedBy === undefined ? 'survived' : 'noticed');
        patience = setTimeout(
          () => {
            this.close();
            end('endless');
          },
          patienceMilliseconds + patienceTimes * (this.milliseconds.get(told.begins) ?? 0),
        );
      });
      child.on('exit', () => {
        clearTimeout(patience);
        this.child = undefined;
        if (said.includes('heap out of memory')) end('endless');
        // The thread with the tests is gone. Once that may be anything; a second time it is the mutant that ends it.
        else if (said.includes('emitUnexpectedExit')) isAgain ? end('endless') : void this.try(mutant, tests, true).then(done, failed);
        else failed(new Error(`the program that tries mutants ended: ${said}`));
      });
      child.send({ mutant, tests } satisfies Task);
    });
  }

  close(): void {
    this.child?.removeAllListeners();
    this.child?.kill('SIGKILL');
    this.child = undefined;
  }
}
