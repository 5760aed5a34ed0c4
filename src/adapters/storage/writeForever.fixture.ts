/** A program of its own for a test: writes foods without end and prints the id of each acknowledged one. */
import { openSqliteStore } from './openStore.ts';

const store = await openSqliteStore(process.argv[2]!);
for (let index = 0; ; index++) {
  const { food } = await store.addFood(
    { name: `Food ${index}` },
    {
      kind: 'read',
      printed: {
        market: 'us',
        serving: {},
        basis: 'per-serving',
        state: 'as-packaged',
        front: [],
        panel: { sodiumMg: index },
        otherColumns: [],
      },
    },
  );
  process.stdout.write(`${food.id}\n`);
}
