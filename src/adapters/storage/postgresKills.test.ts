import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPostgresStore } from './openStore.ts';
import { PostgresServer, postgresPrograms, say } from './postgresServer.fixture.ts';

const kills = process.env.PLATEWRIGHT_LONG === undefined ? 40 : 300;

describe.skipIf(postgresPrograms === undefined)('a PostgreSQL that is killed (skipped where its programs are missing)', () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await PostgresServer.start();
  }, 60_000);
  afterAll(() => server?.end(), 180_000);

  test(`[STO-18] ${kills} kills of backends and of the server under two programs: no acknowledged write is lost or doubled, and the programs live`, async () => {
    const url = await server.newDatabase();
    const script = fileURLToPath(new URL('./hammerStore.fixture.ts', import.meta.url));
    const programs = ['one', 'two'].map(who => spawn(process.execPath, [script, url, who], { stdio: ['pipe', 'pipe', 'inherit'] }));
    const said = programs.map(() => '');
    for (const [at, program] of programs.entries()) {
      program.stdout.on('data', chunk => {
        said[at] += chunk;
      });
    }
    while (!said.every(words => words.includes('saved'))) await setTimeout(20);

    const random = seeded(20_261_130);
    const happened = { terminated: 0, killed: 0, stopped: 0 };
    for (let kill = 0; kill < kills; kill++) {
      await setTimeout(20 + 200 * random());
      happened[await hit(server, url, random)] += 1;
      expect(programs.map(({ exitCode }) => exitCode)).toEqual([null, null]);
    }
    for (const program of programs) {
      const exit = once(program, 'exit');
      program.stdin.end();
      expect(await exit).toEqual([0, null]);
    }

    const lines = said.flatMap(words => words.trim().split('\n'));
    expect(lines.filter(line => line === 'ended')).toHaveLength(2);
    expect(lines.filter(line => line.startsWith('broken'))).toEqual([]);
    const saved = lines.filter(line => line.startsWith('saved ')).map(line => line.slice('saved '.length));
    const told = lines.filter(line => line.startsWith('told ')).map(line => line.split(' ').slice(1));
    const store = await openPostgresStore(url);
    const times = new Map<string, number>();
    for (const { name } of await store.listFoods()) times.set(name, (times.get(name) ?? 0) + 1);
    await store.close();
    expect(saved.filter(name => times.get(name) !== 1)).toEqual([]);
    expect([...times].filter(([name, count]) => name !== 'more' && count > 1)).toEqual([]);
    // Who was told that it is not saved finds it not saved; "not known" leaves both.
    expect(told.filter(([code]) => code !== 'outcome-unknown').filter(([, name]) => times.has(name!))).toEqual([]);
    expect(saved.length).toBeGreaterThan(kills);
    process.stdout.write(
      `${JSON.stringify(happened)}: ${saved.length} writes acknowledged, ${told.length} told ${told.map(([code]) => code)}\n`,
    );
  }, 3_600_000);
});

/** Numbers from 0 up to 1, the same for the same seed (minimal standard generator, Park and Miller 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Ends a connection by its server's word, kills its process (then PostgreSQL ends all and recovers), or stops the server at once and starts it. */
async function hit(server: PostgresServer, url: string, random: () => number): Promise<'terminated' | 'killed' | 'stopped'> {
  const how = random();
  if (how > 0.9) {
    server.stop('immediate');
    server.startAgain();
    return 'stopped';
  }
  for (;;) {
    try {
      const rows = await say(url, 'select pid from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()');
      const pids = rows.map(({ pid }) => Number(pid));
      const pid = pids[Math.floor(random() * pids.length)];
      if (pid !== undefined && how < 0.6) {
        await say(url, `select pg_terminate_backend(${pid})`);
        return 'terminated';
      }
      if (pid !== undefined) {
        process.kill(pid, 'SIGKILL');
        return 'killed';
      }
    } catch {
      // It recovers from the kill before.
    }
    await setTimeout(20);
  }
}
