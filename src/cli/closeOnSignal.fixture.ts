/** Says that it is ready, and closes when a signal comes: `node closeOnSignal.fixture.ts never` does not come to the end of it. */
import { closeOnSignal } from './closeOnSignal.ts';

closeOnSignal(() => (process.argv[2] === 'never' ? new Promise(() => undefined) : Promise.resolve()));
setInterval(() => undefined, 1_000);
process.stdout.write('ready\n');
