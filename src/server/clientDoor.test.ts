import { renameSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import type { ClientVault } from '#app/clientVault.ts';
import { cleanUp, filled, newFolder, passphrase } from '../adapters/clients/vaultWorld.fixture.ts';
import { ClientDoor, type LockStatus } from './clientDoor.ts';
import { ErasedClients } from './erasedClients.ts';
import { testServer } from './testWorld.fixture.ts';

afterEach(cleanUp);

const wait = (milliseconds: number): Promise<void> => new Promise(done => setTimeout(done, milliseconds));

/** An open vault under a passphrase behind its door; both clocks are set by hand. */
async function opened(leaveMilliseconds = 40) {
  const vault: ClientVault = await filled(newFolder(), 1);
  await vault.changePassphrase(undefined, passphrase);
  const clock = { wall: 1_000_000, steady: 500 };
  const forgotten: string[] = [];
  const door = new ClientDoor(
    vault,
    () => forgotten.push('all'),
    { leaveMilliseconds, lookMilliseconds: 5 },
    { wall: () => clock.wall, steady: () => clock.steady },
  );
  // The door was made after the passphrase was set: a touch begins the time.
  door.changed();
  return { vault, door, clock, forgotten };
}

describe('leaving', () => {
  test('[SRV-23] the last window that leaves locks after a while; a page that is loaded again, or another window, does not', async () => {
    const { vault, door, forgotten } = await opened();
    const first = door.enter(() => undefined);
    const second = door.enter(() => undefined);
    first();
    await wait(120);
    expect(vault.state()).toBe('open');
    second();
    const again = door.enter(() => undefined);
    await wait(120);
    expect(vault.state()).toBe('open');
    again();
    expect(vault.state()).toBe('open');
    await wait(120);
    expect([vault.state(), forgotten]).toEqual(['locked', ['all']]);
  });

  test('[SRV-23] every window is told at once, and by another opening that what it shows is to go', async () => {
    const { vault, door } = await opened();
    const heard: LockStatus[][] = [[], []];
    const leave = heard.map(list => door.enter(status => list.push(status)));
    vault.lock();
    await vault.unlock(passphrase);
    for (const list of heard) {
      expect(list.map(({ state }) => state)).toEqual(['open', 'locked', 'open']);
      expect(new Set(list.map(({ opening }) => opening)).size).toBe(2);
    }
    for (const one of leave) one();
  });
});

test('[SRV-23] a window that still listens while the program ends is told that it is locked', async () => {
  const { vault, door } = await opened();
  const heard: LockStatus[] = [];
  door.enter(status => heard.push(status));
  await vault.close();
  // As the beat of the stream does.
  expect(door.status().state).toBe('locked');
  door.lockWhenIdle();
  expect(heard.at(-1)!.state).toBe('locked');
});

test('[SRV-23] it locks, and tells, also where the data folder is gone; who asks for the head alone is no window', async () => {
  const folder = newFolder();
  const vault = await filled(folder, 1);
  await vault.changePassphrase(undefined, passphrase);
  const told: string[] = [];
  vault.watch(() => told.push(vault.state()));
  renameSync(folder, `${folder}-gone`);
  vault.lock();
  renameSync(`${folder}-gone`, folder);
  expect([vault.state(), told]).toEqual(['locked', ['locked']]);
  const server = await testServer(false);
  try {
    const address = 'http://127.0.0.1:4173/api/client-events';
    const answer = await server.app.request(address, { method: 'HEAD', headers: { host: '127.0.0.1:4173' } });
    expect([answer.status, answer.body]).toEqual([200, null]);
  } finally {
    await server.close();
  }
});

describe('idle', () => {
  test('[SRV-24] no key and no pointer for the minutes that were set: it locks by itself', async () => {
    const { vault, door, clock } = await opened();
    vault.setIdleMinutes(2);
    clock.wall += 119_000;
    clock.steady += 119_000;
    await wait(40);
    expect(vault.state()).toBe('open');
    door.touch();
    clock.wall += 119_000;
    clock.steady += 119_000;
    await wait(40);
    expect(vault.state()).toBe('open');
    clock.wall += 1_000;
    clock.steady += 1_000;
    await wait(40);
    expect([vault.state(), door.status().wasIdle]).toEqual(['locked', true]);
    await vault.unlock(passphrase);
    expect(door.status().wasIdle).toBe(false);
    vault.lock();
    expect(door.status().wasIdle).toBe(false);
  });

  test.each([
    ['a computer that slept: its steady clock stood', 16 * 60_000, 0],
    ['a clock that was set back', -3_600_000, 16 * 60_000],
  ])('[SRV-24] %s does not keep it open, and a touch that comes too late does not either', async (_, wall, steady) => {
    const { vault, door, clock } = await opened();
    clock.wall += wall;
    clock.steady += steady;
    door.touch();
    expect(vault.state()).toBe('locked');
  });

  test('[SRV-24] listening and asking how the lock is are no touch', async () => {
    const { vault, door, clock } = await opened();
    for (let minute = 0; minute < 15; minute++) {
      clock.wall += 60_000;
      clock.steady += 60_000;
      door.enter(() => undefined);
      door.status();
      door.lockWhenIdle();
    }
    expect(vault.state()).toBe('locked');
  });
});

test('[SRV-23] a window listens to a stream that tells how the lock is and each change, and is never kept', async () => {
  const server = await testServer(false);
  try {
    const response = await server.app.request('http://127.0.0.1:4173/api/client-events', { headers: { host: '127.0.0.1:4173' } });
    expect([response.headers.get('content-type'), response.headers.get('cache-control')]).toEqual(['text/event-stream', 'no-store']);
    const reader = response.body!.getReader();
    const next = async (): Promise<unknown> => JSON.parse(new TextDecoder().decode((await reader.read()).value).slice('data: '.length));
    expect(await next()).toMatchObject({ state: 'open', hasPassphrase: false });
    await server.call('PUT', '/clients/passphrase', { next: passphrase });
    expect(await next()).toMatchObject({ state: 'open', hasPassphrase: true });
    await server.call('POST', '/clients/lock', { open: false });
    expect(await next()).toMatchObject({ state: 'locked', hasPassphrase: true });
    await reader.cancel();
  } finally {
    await server.close();
  }
});

test('[SRV-22] an erased client is kept in memory for the time alone', async () => {
  const erased = new ErasedClients(() => new Date('2026-06-15T12:00:00Z'), 30);
  erased.keep({ record: { id: 'a', version: 1 }, drafts: undefined }, 'A. B.');
  expect(erased.list()).toMatchObject([{ id: 'a', name: 'A. B.' }]);
  await wait(90);
  expect([erased.list(), erased.find('a')]).toEqual([[], undefined]);
});
