/**
 * A program of its own for a test: writes to and reads from a PostgreSQL database without end, and prints of each write whether it was
 * acknowledged ("saved NAME"), told ("told CODE NAME") or broke ("broken WORDS"). Ends when its input does.
 */
import { setTimeout } from 'node:timers/promises';
import { Fault } from '#core/errors.ts';
import { openPostgresStore } from './openStore.ts';

const label = {
  kind: 'read',
  printed: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: {}, otherColumns: [] },
} as const;
const store = await openPostgresStore(process.argv[2]!);
let isOver = false;
process.stdin.on('end', () => {
  isOver = true;
});
process.stdin.resume();

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}

async function tell(name: string, work: () => Promise<unknown>): Promise<void> {
  try {
    await work();
    print(`saved ${name}`);
  } catch (error) {
    print(error instanceof Fault ? `told ${error.code} ${name}` : `broken ${name} ${error}`);
  }
}

async function writeForever(who: string): Promise<void> {
  for (let index = 0; !isOver; index++) {
    const name = `${who}-${index}`;
    await tell(name, () =>
      index % 5 === 0
        ? store.applyImport({
            fileName: name,
            labels: Array.from({ length: 300 }, (_, at) => ({ begins: { name: at === 0 ? name : 'more' }, label })),
          })
        : store.addFood({ name }, label),
    );
  }
}

async function readForever(): Promise<void> {
  while (!isOver) {
    try {
      await store.counts();
      await store.listFoods({ search: '-1' });
    } catch (error) {
      print(error instanceof Fault ? `read ${error.code}` : `broken read ${error}`);
    }
    await setTimeout(3);
  }
}

print('begun');
const who = process.argv[3]!;
await Promise.all([writeForever(`${who}a`), writeForever(`${who}b`), readForever(), readForever()]);
await store.close();
print('ended');
