/** Prints a page so many times, one after the other: `node printPdf.fixture.ts TIMES HTML`. Ends in order at a signal, as the commands do. */
import { pdfPrinter, sweepProfiles } from './printPdf.ts';

const [times, html = ''] = process.argv.slice(2);
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(130));
await sweepProfiles();
for (let time = 0; time < Number(times); time++) await pdfPrinter()(html);
