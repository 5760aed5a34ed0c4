import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

/** The folder of PostgreSQL's programs on this machine; undefined where there is none. */
export const postgresPrograms: string | undefined = findPrograms();
const isRoot = process.getuid?.() === 0;

/** Where root's PostgreSQL, which is another user, may go as well: a temporary folder of root's own (TMPDIR) may be closed to it. */
export const passableFolder = isRoot ? '/tmp' : tmpdir();

function findPrograms(): string | undefined {
  const versions = existsSync('/usr/lib/postgresql') ? readdirSync('/usr/lib/postgresql').sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [...versions.map(version => `/usr/lib/postgresql/${version}/bin`), ...(process.env.PATH ?? '').split(':')];
  return folders.find(folder => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'pg_ctl')));
}

/** PostgreSQL refuses to run as root, so its programs run as the user that Debian makes for it. */
function run(program: string, ...given: string[]): void {
  const command = [join(postgresPrograms!, program), ...given];
  const [file, ...rest] = isRoot ? ['runuser', '-u', 'postgres', '--', ...command] : command;
  execFileSync(file!, rest, { stdio: ['ignore', 'ignore', 'pipe'], cwd: '/' });
}

function freePort(): Promise<number> {
  return new Promise(found => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => found(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

/** Says something to a database on a connection of its own. */
export async function say(database: string, statement: string): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client(database);
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(statement)).rows;
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** A real PostgreSQL of the machine, on a free port of the loopback address, with its data in a folder of its own. */
export class PostgresServer {
  readonly folder: string;
  readonly port: number;
  private readonly data: string;
  private databases = 0;

  private constructor(folder: string, port: number) {
    this.folder = folder;
    this.port = port;
    this.data = join(folder, 'data');
  }

  /** In `folder`, by default a temporary one. What would survive a power cut is PostgreSQL's own affair, and waiting for the disk takes minutes. */
  static async start(folder = mkdtempSync(join(passableFolder, 'platewright-postgres-'))): Promise<PostgresServer> {
    const server = new PostgresServer(folder, await freePort());
    chmodSync(folder, 0o755);
    mkdirSync(server.data);
    server.own(folder, server.data);
    run('initdb', '-D', server.data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-sync', '--wal-segsize=1');
    server.startAgain();
    return server;
  }

  get url(): string {
    return `postgresql://postgres@127.0.0.1:${this.port}`;
  }

  async newDatabase(more = ''): Promise<string> {
    this.databases += 1;
    await say(`${this.url}/postgres`, `create database workspace_${this.databases} ${more}`);
    return `${this.url}/workspace_${this.databases}`;
  }

  /** Makes folders PostgreSQL's own, where it runs as another user. */
  own(...folders: string[]): void {
    if (isRoot) execFileSync('chown', ['postgres', ...folders]);
  }

  startAgain(): void {
    const options = `-p ${this.port} -k ${this.folder} -c listen_addresses=127.0.0.1 -c fsync=off -c full_page_writes=off -c max_wal_size=8MB -c min_wal_size=2MB`;
    run('pg_ctl', '-D', this.data, '-w', '-l', join(this.folder, 'log'), '-o', options, 'start');
  }

  stop(mode: 'fast' | 'immediate'): void {
    run('pg_ctl', '-D', this.data, '-m', mode, '-w', 'stop');
  }

  /** It may have ended by itself. */
  stopIfRunning(): void {
    try {
      this.stop('immediate');
    } catch {
      // It has.
    }
  }

  end(): void {
    this.stopIfRunning();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
