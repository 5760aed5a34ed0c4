/** A program of its own for a test: opens a store as whoever runs it, writes one food, prints how it went. */
import { Fault } from '#core/errors.ts';
import { openSqliteStore } from './openStore.ts';

try {
  const store = await openSqliteStore(process.argv[2]!);
  await store.addFood(
    { name: 'Ham' },
    {
      kind: 'read',
      printed: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: {}, otherColumns: [] },
    },
  );
  await store.close();
  process.stdout.write('saved\n');
} catch (error) {
  process.stdout.write(`${error instanceof Fault ? error.code : error}\n`);
}
