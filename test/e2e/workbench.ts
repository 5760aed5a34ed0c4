import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { program } from '../program.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** A Chromium-family browser of this machine; undefined where there is none, and then the tests say that they are skipped. */
export const browserPath = ['chromium-headless-shell', 'chromium', 'google-chrome'].map(inPath).find(path => path !== undefined);

function inPath(name: string): string | undefined {
  try {
    const path = execFileSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).trim();
    return existsSync(path) ? path : undefined;
  } catch {
    return undefined;
  }
}

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: browserPath!, args: ['--no-sandbox', '--disable-background-networking'] });
}

export interface Workbench {
  readonly pid: number;
  /** Without the secret: http://127.0.0.1:PORT. */
  readonly address: string;
  /** As printed, with the secret. */
  readonly printed: string;
  readonly folder: string;
  /** Everything it wrote to standard error so far. */
  readonly said: () => string;
  /** Lets a browser's window in, as opening the printed address does. */
  readonly letIn: (context: BrowserContext) => Promise<void>;
  /** "platewright-PORT=…", as a browser sends it that was let in. */
  readonly cookie: string;
  /** A call as the workbench's own page makes it. */
  readonly fetch: (path: string, init?: RequestInit) => Promise<Response>;
  /** The exit code; null when the signal itself ended it. */
  readonly stop: (signal?: NodeJS.Signals) => Promise<number | null>;
}

/** This Node with the program itself; `bin/platewright` is another. */
export const ownCommand = [process.execPath, program, 'start'];

/** Starts the real program on a free port with a data folder of its own, and waits for the address it prints. */
export async function startWorkbench(
  folder = mkdtempSync(join(tmpdir(), 'platewright-')),
  env: Record<string, string> = {},
  { command = ownCommand, cwd = root }: { readonly command?: readonly string[]; readonly cwd?: string } = {},
): Promise<Workbench> {
  const [program, ...args] = command;
  const child: ChildProcess = spawn(program!, args, {
    cwd,
    env: { ...process.env, PORT: '0', PLATEWRIGHT_DATA: folder, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  child.stderr?.on('data', chunk => {
    said += chunk;
  });
  const ended = new Promise<number | null>(done => child.once('exit', done));
  const printed = await new Promise<string>((found, failed) => {
    let output = '';
    child.stdout?.on('data', chunk => {
      output += chunk;
      const match = /^Platewright runs at (\S+)\n/m.exec(output);
      if (match !== null) found(match[1]!);
    });
    child.once('exit', code => failed(new Error(`the program ended with ${code}: ${said}`)));
  });
  const stop = async (signal: NodeJS.Signals = 'SIGTERM'): Promise<number | null> => {
    child.kill(signal);
    return ended;
  };
  const { origin: address } = new URL(printed);
  const opened = await fetch(printed, { redirect: 'manual' });
  const cookie = opened.headers.get('set-cookie')?.split(';')[0] ?? '';
  return {
    pid: child.pid!,
    address,
    printed,
    folder,
    said: () => said,
    cookie,
    letIn: async context => {
      await context.request.get(printed);
    },
    fetch: (path, init = {}) => fetch(`${address}${path}`, { ...init, headers: { ...init.headers, cookie } }),
    stop,
  };
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}

/** Waits until the page has asked for nothing and got nothing for half a second. The stream on which it hears of the lock never ends, so that "network idle" never comes. */
export async function quiet(page: Page): Promise<void> {
  let last = performance.now();
  const heard = (): void => {
    last = performance.now();
  };
  page.on('request', heard).on('requestfinished', heard);
  while (performance.now() - last < 500) await page.waitForTimeout(100);
  page.off('request', heard).off('requestfinished', heard);
}

/** The page is looked at again after a while: it reads anew what `path` answers. */
export async function lookAgain(page: Page, path: string): Promise<void> {
  const read = page.waitForResponse(response => new URL(response.url()).pathname === path);
  const look = setInterval(() => void page.evaluate("dispatchEvent(new Event('visibilitychange'))").catch(() => undefined), 500);
  await read.finally(() => clearInterval(look));
}

/** What a page complains of: errors on its console and mistakes of its own, while it is used. */
export function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = [];
  // Axe and a test's looks into a frame without scripts are refused there like any script: that is no fault of the page.
  const isOwn = (text: string): boolean => text.startsWith("Blocked script execution in '");
  page.on('console', message => message.type() === 'error' && !isOwn(message.text()) && complaints.push(message.text()));
  page.on('pageerror', error => complaints.push(error.message));
  return complaints;
}

/** WCAG 2.2 A and AA, and what axe holds to be best practice. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** What changes with the colors alone. */
const rulesOfColors = ['color-contrast', 'link-in-text-block'];

/**
 * What axe finds. A frame lets no script in, axe neither: what it shows is looked at by itself.
 * @param within what is looked at, where it is not the whole page
 */
export function violationsOf(page: Page, within: readonly string[] = []): Promise<readonly unknown[]> {
  return found(page, within, axe => axe.withTags(rules));
}

/** The same in light colors, then in dark ones what changes with them. */
export async function violationsOfBoth(page: Page, within: readonly string[] = []): Promise<Record<'light' | 'dark', readonly unknown[]>> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await violationsOf(page, within);
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await found(page, within, axe => axe.withRules(rulesOfColors));
  await page.emulateMedia({ colorScheme: 'light' });
  return { light, dark };
}

async function found(page: Page, within: readonly string[], chosen: (axe: AxeBuilder) => AxeBuilder): Promise<readonly unknown[]> {
  // In full it tells of the violations alone, which takes half the time.
  const axe = new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .exclude('iframe');
  for (const selector of within) axe.include(selector);
  const { violations, passes } = await chosen(axe).analyze();
  if (passes.length === 0) throw new Error(`axe looked at nothing: ${page.url()} ${within}`);
  return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
}

/** The file that the browser saves after a press. */
export async function savedBy(page: Page, press: () => Promise<void>): Promise<Uint8Array> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return readFileSync(await download.path());
}
