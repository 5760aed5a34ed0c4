import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { ownCommand, startWorkbench, type Workbench } from '../../e2e/workbench.ts';

// biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
type Body = any;
export interface Answer {
  readonly status: number;
  readonly body: Body;
}

/** Folders of one program's own: its data, and all that it or a browser could leave elsewhere. */
export class Home {
  readonly root = mkdtempSync(join(tmpdir(), 'platewright-kills-'));
  readonly data = join(this.root, 'data');
  readonly temporary = join(this.root, 'temporary');
  private readonly own = join(this.root, 'home');

  constructor() {
    for (const folder of [this.data, this.temporary, this.own]) mkdirSync(folder);
  }

  get env(): Record<string, string> {
    const compiled = fileURLToPath(new URL('../../../node_modules/.cache/platewright', import.meta.url));
    const xdg = {
      XDG_CONFIG_HOME: join(this.own, 'config'),
      XDG_CACHE_HOME: join(this.own, 'cache'),
      XDG_DATA_HOME: join(this.own, 'share'),
    };
    return { TMPDIR: this.temporary, HOME: this.own, ...xdg, NODE_COMPILE_CACHE: compiled };
  }

  /** Puts a copy of another home's data folder in the place of this one's. */
  take(template: Home): void {
    rmSync(this.data, { recursive: true, force: true });
    cpSync(template.data, this.data, { recursive: true });
  }

  remove(): void {
    rmSync(this.root, { recursive: true, force: true, maxRetries: 5 });
  }

  /** Processes that were started out of this home and still run, the program among them. */
  processes(): readonly number[] {
    const mark = `TMPDIR=${this.temporary}\0`;
    return readdirSync('/proc')
      .filter(name => /^\d+$/.test(name))
      .filter(pid => {
        try {
          return readFileSync(`/proc/${pid}/environ`, 'latin1').includes(mark);
        } catch {
          return false;
        }
      })
      .map(Number);
  }
}

/** The real program as a browser meets it that was let in. */
export class Program {
  private readonly workbench: Workbench;

  private constructor(workbench: Workbench) {
    this.workbench = workbench;
  }

  static async start(home: Home, env: Record<string, string> = {}): Promise<Program> {
    return new Program(await startWorkbench(home.data, { ...home.env, ...env }));
  }

  /** Begins a start and kills it after so many milliseconds, wherever it is by then. */
  static async startAndKill(home: Home, milliseconds: number, env: Record<string, string> = {}): Promise<void> {
    const [command, ...args] = ownCommand;
    const child: ChildProcess = spawn(command!, args, {
      env: { ...process.env, PORT: '0', PLATEWRIGHT_DATA: home.data, ...home.env, ...env },
      stdio: 'ignore',
    });
    const ended = once(child, 'exit');
    await setTimeout(milliseconds);
    child.kill('SIGKILL');
    await ended;
  }

  /** Rejects when the program ends before it has answered. */
  async call(method: string, path: string, body?: unknown): Promise<Answer> {
    const isPlain = body === undefined || body instanceof FormData || body instanceof Uint8Array;
    const headers = { 'content-type': body instanceof Uint8Array ? 'application/octet-stream' : 'application/json' };
    const response = await this.workbench.fetch(`/api${path}`, {
      method,
      ...(body === undefined || body instanceof FormData ? {} : { headers }),
      ...(body === undefined ? {} : { body: isPlain ? (body as FormData) : JSON.stringify(body) }),
    });
    const bytes = Buffer.from(await response.arrayBuffer());
    const isJson = response.headers.get('content-type')?.includes('json') === true;
    return { status: response.status, body: isJson ? JSON.parse(bytes.toString()) : bytes };
  }

  /** As `call`, where any answer but 200 is a mistake of the test itself. */
  async done(method: string, path: string, body?: unknown): Promise<Body> {
    const answer = await this.call(method, path, body);
    if (answer.status !== 200) throw new Error(`${method} ${path}: ${answer.status} ${JSON.stringify(answer.body)}`);
    return answer.body;
  }

  said(): string {
    return this.workbench.said();
  }

  async kill(): Promise<void> {
    await this.workbench.stop('SIGKILL');
  }

  /** The exit code; null when the signal itself ended it. */
  stop(): Promise<number | null> {
    return this.workbench.stop('SIGTERM');
  }
}
