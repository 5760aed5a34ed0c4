/** A program of its own for a test: brings the first contents, twelve foods, to a PostgreSQL database; hangs after five of them where it is told so. */
import { openPostgresStore } from './openStore.ts';

const label = {
  kind: 'read',
  printed: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: {}, otherColumns: [] },
} as const;
const store = await openPostgresStore(process.argv[2]!);
await store.onceWhenNew(async () => {
  for (let index = 0; index < 12; index++) {
    if (index === 5 && process.argv[3] === 'hang') {
      process.stdout.write('hangs\n');
      await new Promise(() => setInterval(() => undefined, 1_000));
    }
    await store.addFood({ name: `Demo ${index}`, isDemo: true }, label);
  }
  process.stdout.write('brought\n');
});
await store.close();
