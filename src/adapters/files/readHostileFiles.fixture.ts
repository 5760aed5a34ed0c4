/**
 * Reads some of the hostile files of a folder as the server does, those from one number up to another, and prints a line of JSON for each:
 * a program of its own, so that its memory is its own.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hostileFiles } from './hostileFiles.fixture.ts';
import { readingLimits, readTableApart } from './readTableApart.ts';

// More time than the server gives: on a busy machine the clock would stop what takes a second of work. The test looks at the work.
const readTable = readTableApart({ ...readingLimits, seconds: { first: 60, eachMegabyte: 0, most: 60 } });
const [folder = '', from, end] = process.argv.slice(2);
for (const [at, { name, gives }] of hostileFiles.entries()) {
  if (at < Number(from) || at >= Number(end)) continue;
  const bytes = new Uint8Array(readFileSync(join(folder, String(at))));
  const before = process.cpuUsage();
  let answered = 0;
  const other = setInterval(() => {
    answered += 1;
  }, 5);
  const gave = await readTable(bytes).then(
    () => 'read',
    error => error.code ?? String(error),
  );
  clearInterval(other);
  const { user, system } = process.cpuUsage(before);
  const line = { name, gives, gave, cpuSeconds: (user + system) / 1e6, answered, peakMegabytes: peakMegabytes() };
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

/** Of this program. The peak that the system keeps for it begins with that of the one which started it (getrusage(2)); proc(5) has its own. */
function peakMegabytes(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS / 1024;
  return Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]) / 1024;
}
