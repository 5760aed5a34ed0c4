import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

/** Runs a small program that says "begun" and "done", and kills it so many milliseconds after "begun". Whether it had said "done". */
export async function killedApart(
  script: string,
  args: readonly string[],
  env: Record<string, string>,
  milliseconds?: number,
): Promise<boolean> {
  const path = fileURLToPath(new URL(script, import.meta.url));
  const child = spawn(process.execPath, [path, ...args], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, ...env } });
  const ended = once(child, 'exit');
  let said = '';
  const begun = new Promise<void>(done => {
    child.stdout.on('data', text => {
      said += text;
      if (said.includes('begun')) done();
    });
  });
  await Promise.race([begun, ended]);
  if (milliseconds === undefined) {
    const [code] = await ended;
    if (code !== 0) throw new Error(`${script} ended with ${code}`);
    return true;
  }
  await Promise.race([setTimeout(milliseconds), ended]);
  child.kill('SIGKILL');
  await ended;
  return said.includes('done');
}
