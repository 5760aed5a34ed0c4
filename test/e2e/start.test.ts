import { chmodSync, existsSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, realpathSync, symlinkSync } from 'node:fs';
import { Agent, get } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { ownCommand, removeFolder, startWorkbench } from './workbench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** The system's Node, which may be too old for the program: its launcher then changes to the packaged one. */
const systemNode = ['/usr/bin/node', '/usr/local/bin/node'].find(path => existsSync(path)) ?? process.execPath;

const underUmask = (umask: string): readonly string[] => ['sh', '-c', `umask ${umask}; exec "$0" "$@"`, ...ownCommand];
const modeOf = (path: string): string => (lstatSync(path).mode & 0o777).toString(8);
const databasesIn = (folder: string): string[] => readdirSync(folder).filter(name => /\.sqlite(-wal|-shm)?$/.test(name));

/** What others may look into, in a data folder and itself. */
const openIn = (folder: string): string[] => {
  const names = readdirSync(folder).filter(name => statOf(join(folder, name))?.isSymbolicLink() === false);
  expect(names).toContain('platewright.sqlite-wal');
  return [folder, ...names.map(name => join(folder, name))].filter(path => ((statOf(path)?.mode ?? 0) & 0o077) !== 0);
};

/** Of what the program has just written beside its place and moved there since, nothing. */
const statOf = (path: string) => lstatSync(path, { throwIfNoEntry: false });

describe.skipIf(process.platform === 'win32')('modes (skipped on Windows, which has none)', () => {
  test.each(['000', '022', '077'])(
    '[SRV-43] under umask %s: a new folder, and one that was opened to others',
    { timeout: 90_000 },
    async umask => {
      const place = mkdtempSync(join(tmpdir(), 'platewright-modes-'));
      const folder = join(place, 'new', 'data');
      const first = await startWorkbench(folder, {}, { command: underUmask(umask) });
      expect(openIn(folder)).toEqual([]);
      // Killed, so that the logs stay.
      await first.stop('SIGKILL');
      for (const name of databasesIn(folder)) chmodSync(join(folder, name), 0o666);
      chmodSync(folder, 0o777);
      symlinkSync('/etc/hosts', join(folder, 'platewright.sqlite-link'));
      const hosts = modeOf('/etc/hosts');
      const again = await startWorkbench(folder, {}, { command: underUmask(umask) });
      expect(openIn(folder)).toEqual([]);
      expect(modeOf('/etc/hosts')).toBe(hosts);
      await again.stop();
      removeFolder(place);
    },
  );

  test('[SRV-43] a folder that all users share keeps its mode, which is told', { timeout: 60_000 }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'platewright-modes-'));
    chmodSync(folder, 0o1777);
    const workbench = await startWorkbench(folder);
    expect(workbench.said()).toContain('is shared by all users');
    expect(openIn(folder)).toEqual([folder]);
    await workbench.stop();
    removeFolder(folder);
  });
});

describe('the end', () => {
  const launchers = {
    'the program itself': ownCommand,
    'the launcher under the system’s Node': [systemNode, join(root, 'bin/platewright'), 'start'],
  };
  const cases = Object.entries(launchers).flatMap(([name, command]) =>
    (['SIGINT', 'SIGTERM', 'SIGHUP'] as const).map(signal => ({ name, signal, command })),
  );
  test.each(cases)(
    '[SRV-47] $signal to $name: 0 within 3 s, with connections open, and no log left',
    { timeout: 60_000 },
    async ({ signal, command }) => {
      const workbench = await startWorkbench(undefined, {}, { command });
      const { hostname, port } = new URL(workbench.address);
      // One that is kept alive, one in the middle of a request, one that asks for nothing.
      const agent = new Agent({ keepAlive: true });
      const kept = new Promise(done =>
        get(`${workbench.address}/api/workspace`, { agent, headers: { cookie: workbench.cookie } }, answer =>
          answer.resume().once('end', done),
        ),
      );
      const half = connect(Number(port), hostname, () =>
        half.write('POST /api/labels/read HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 100\r\n\r\n{'),
      );
      const idle = connect(Number(port), hostname);
      for (const socket of [half, idle]) socket.on('error', () => undefined);
      await kept;
      const start = performance.now();
      expect(await workbench.stop(signal)).toBe(0);
      expect(performance.now() - start).toBeLessThan(3_000);
      expect(databasesIn(workbench.folder).sort()).toEqual(['clients.sqlite', 'platewright.sqlite']);
      agent.destroy();
      removeFolder(workbench.folder);
    },
  );
});

describe('where it is started from', () => {
  test('[SRV-48] another working folder, a link to the launcher, and a relative data folder', { timeout: 60_000 }, async () => {
    const place = realpathSync(mkdtempSync(join(tmpdir(), 'platewright-place-')));
    mkdirSync(join(place, 'work'));
    symlinkSync(join(root, 'bin/platewright'), join(place, 'linked'));
    const workbench = await startWorkbench('../data', {}, { command: [process.execPath, '../linked', 'start'], cwd: join(place, 'work') });
    expect((await workbench.fetch('/')).status).toBe(200);
    expect((await workbench.fetch('/api/workspace')).status).toBe(200);
    await workbench.stop();
    expect(databasesIn(join(place, 'data')).sort()).toEqual(['clients.sqlite', 'platewright.sqlite']);
    removeFolder(place);
  });
});
