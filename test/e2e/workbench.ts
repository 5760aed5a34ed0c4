import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';

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
  readonly address: string;
  readonly folder: string;
  /** Everything it wrote to standard error so far. */
  readonly said: () => string;
  readonly stop: (signal?: NodeJS.Signals) => Promise<void>;
}

/** Starts the real program on a free port with a data folder of its own, and waits for the address it prints. */
export async function startWorkbench(
  folder = mkdtempSync(join(tmpdir(), 'platewright-')),
  env: Record<string, string> = {},
): Promise<Workbench> {
  const child: ChildProcess = spawn(process.execPath, [join(root, 'src/cli/main.ts'), 'start'], {
    cwd: root,
    env: { ...process.env, PORT: '0', PLATEWRIGHT_DATA: folder, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  child.stderr?.on('data', chunk => {
    said += chunk;
  });
  const ended = new Promise<void>(done => child.once('exit', () => done()));
  const address = await new Promise<string>((found, failed) => {
    let printed = '';
    child.stdout?.on('data', chunk => {
      printed += chunk;
      const match = /http:\/\/127\.0\.0\.1:\d+/.exec(printed);
      if (match !== null) found(match[0]);
    });
    child.once('exit', code => failed(new Error(`the program ended with ${code}: ${said}`)));
  });
  const stop = async (signal: NodeJS.Signals = 'SIGTERM'): Promise<void> => {
    child.kill(signal);
    await ended;
  };
  return { address, folder, said: () => said, stop };
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

/** What a page complains of: errors on its console and mistakes of its own, while it is used. */
export function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = [];
  // Axe and a test's looks into a frame without scripts are refused there like any script: that is no fault of the page.
  const isOwn = (text: string): boolean => text.startsWith("Blocked script execution in '");
  page.on('console', message => message.type() === 'error' && !isOwn(message.text()) && complaints.push(message.text()));
  page.on('pageerror', error => complaints.push(error.message));
  return complaints;
}

/** What axe finds (WCAG 2.2 A and AA). A frame lets no script in, axe neither: what it shows is looked at by itself. */
export async function violationsOf(page: Page): Promise<readonly unknown[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .exclude('iframe')
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
}

/** The file that the browser saves after a press. */
export async function savedBy(page: Page, press: () => Promise<void>): Promise<Uint8Array> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return readFileSync(await download.path());
}
