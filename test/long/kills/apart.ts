import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

export interface Apart {
  readonly isDone: boolean;
  /** From "begun" to "done", or to the end. */
  readonly milliseconds: number;
}

/** Runs a small program that says "begun" and "done", and kills it so many milliseconds after "begun"; never where none are given. */
export async function apart(script: URL, args: readonly string[], env: Record<string, string>, killAfter?: number): Promise<Apart> {
  const child = spawn(process.execPath, [fileURLToPath(script), ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env },
  });
  const ended = once(child, 'exit');
  let said = '';
  const says = (word: string) =>
    new Promise<void>(done => {
      child.stdout.on('data', text => {
        said += text;
        if (said.includes(word)) done();
      });
    });
  const done = says('done');
  await Promise.race([says('begun'), ended]);
  const start = performance.now();
  await Promise.race([killAfter === undefined ? done : setTimeout(killAfter), ended]);
  const milliseconds = performance.now() - start;
  if (killAfter !== undefined) child.kill('SIGKILL');
  await ended;
  return { isDone: said.includes('done'), milliseconds };
}
