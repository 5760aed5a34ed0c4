import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fault, label } from './contract/samples.ts';
import { CuttingProxy } from './cuttingProxy.fixture.ts';
import { openPostgresStore } from './openStore.ts';
import { PostgresServer, postgresPrograms, say } from './postgresServer.fixture.ts';

describe.skipIf(postgresPrograms === undefined)('a PostgreSQL that is away (skipped where its programs are missing)', () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await PostgresServer.start();
  }, 60_000);
  afterAll(() => server?.end(), 180_000);

  const namesIn = async (url: string) => (await say(url, 'select name from foods order by name')).map(({ name }) => name);

  test.each(['before-commit', 'after-commit'] as const)('[STO-18] a connection that breaks %s: the write is there once', async cut => {
    const direct = await server.newDatabase();
    const proxy = await CuttingProxy.start(server.port);
    const store = await openPostgresStore(direct.replace(`:${server.port}/`, `:${proxy.port}/`));
    try {
      await store.addFood({ name: 'Bread' }, label(1));
      proxy.next = cut;
      const { food } = await store.addFood({ name: 'Ham' }, label(2));
      expect(proxy.next).toBeUndefined();
      expect(await store.getFood(food.id)).toMatchObject({ name: 'Ham' });
      expect(await namesIn(direct)).toEqual(['Bread', 'Ham']);
    } finally {
      await store.close();
      proxy.end();
    }
  });

  test('[STO-18] where it cannot be found out whether a write was kept, that is told', async () => {
    const direct = await server.newDatabase();
    const proxy = await CuttingProxy.start(server.port);
    const store = await openPostgresStore(direct.replace(`:${server.port}/`, `:${proxy.port}/`));
    try {
      proxy.next = 'after-commit';
      proxy.staysClosed = true;
      expect(await fault(store.addFood({ name: 'Ham' }, label(2)))).toBe('outcome-unknown');
      expect(await namesIn(direct)).toEqual(['Ham']);
    } finally {
      await store.close();
      proxy.end();
    }
  });

  test('[STO-18] a server that stays away is told to reads and writes, and the next request after its return works', async () => {
    const store = await openPostgresStore(await server.newDatabase());
    try {
      const { food } = await store.addFood({ name: 'Ham' }, label(2));
      server.stop('immediate');
      const told = await Promise.all([fault(store.getFood(food.id)), fault(store.changeFood(food.id, 1, { name: 'Lost' }))]);
      expect(told).toEqual(['database-unreachable', 'database-unreachable']);
      server.startAgain();
      expect(await store.getFood(food.id)).toMatchObject({ name: 'Ham', version: 1 });
      expect(await store.changeFood(food.id, 1, { name: 'Kept' })).toMatchObject({ version: 2 });
    } finally {
      await store.close();
    }
  });

  test('[STO-18] a server that returns in time is waited for: nobody is told anything', async () => {
    const store = await openPostgresStore(await server.newDatabase());
    try {
      const { food } = await store.addFood({ name: 'Ham' }, label(2));
      server.stop('immediate');
      const waiting = Promise.all([store.getFood(food.id), store.changeFood(food.id, 1, { name: 'Kept' }), store.counts()]);
      server.startAgain();
      expect(await waiting).toMatchObject([{ id: food.id }, { version: 2 }, { foods: 1 }]);
    } finally {
      await store.close();
    }
  });

  const script = fileURLToPath(new URL('./beginStore.fixture.ts', import.meta.url));
  const begin = (url: string, ...more: string[]): ChildProcess =>
    spawn(process.execPath, [script, url, ...more], { stdio: ['ignore', 'pipe', 'inherit'] });

  test('[STO-19] four programs that start at once on an empty database bring its first contents once', async () => {
    const url = await server.newDatabase();
    const programs = Array.from({ length: 4 }, () => begin(url));
    let said = '';
    for (const { stdout } of programs) {
      stdout?.on('data', chunk => {
        said += chunk;
      });
    }
    const exits = await Promise.all(programs.map(program => once(program, 'close')));
    expect(exits.map(([code]) => code)).toEqual([0, 0, 0, 0]);
    expect(said).toBe('brought\n');
    expect(await namesIn(url)).toHaveLength(12);
  });

  test('[STO-19] when the one that brings them is killed, another one waiting brings them whole', async () => {
    const url = await server.newDatabase();
    const first = begin(url, 'hang');
    await once(first.stdout!, 'data');
    const others = [begin(url), begin(url)];
    const exits = Promise.all(others.map(program => once(program, 'exit')));
    first.kill('SIGKILL');
    expect((await exits).map(([code]) => code)).toEqual([0, 0]);
    expect(new Set(await namesIn(url)).size).toBe(12);
    expect(await namesIn(url)).toHaveLength(12);
  });
});
