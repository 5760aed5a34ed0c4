/**
 * Prints a page so many times, and ends in order at a signal, as the commands do: `node printPdf.fixture.ts TIMES HTML` one after the
 * other; with a third word all at once, the first two of them no longer wanted after a moment. Prints the lengths, or why there is none.
 */
import { setTimeout } from 'node:timers/promises';
import { Fault } from '#core/errors.ts';
import { pdfPrinter, sweepProfiles } from './printPdf.ts';

const [times, html = '', atOnce] = process.argv.slice(2);
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(130));
await sweepProfiles();
const found: (number | string)[] = [];
if (atOnce === undefined) for (let time = 0; time < Number(times); time++) found.push((await pdfPrinter()(html)).length);
else {
  const gone = new AbortController();
  const prints = Array.from({ length: Number(times) }, (_, at) =>
    pdfPrinter(
      process.env,
      at < 2 ? gone.signal : undefined,
    )(html).then(
      ({ length }) => length,
      error => (error instanceof Fault ? error.code : String(error)),
    ),
  );
  await setTimeout(100);
  gone.abort();
  found.push(...(await Promise.all(prints)));
}
process.stdout.write(JSON.stringify(found));
