import { spawn } from 'node:child_process';
import { accessSync, constants, statSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, isAbsolute, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { PdfPrinter } from '#app/ports.ts';
import { Fault } from '#core/errors.ts';
import { readingFontStyle } from './readingFont.ts';

/** Browsers that print to a tagged PDF from the command line, by the names they have in a PATH. */
const names = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
  'chrome',
  'msedge',
];

/** Where installers put them on systems that do not use the PATH. */
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  '/Applications/Brave Browser.app/Contents/MacOS/Brave Browser',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** A Chromium-family browser of this machine: the one that PLATEWRIGHT_BROWSER names, else the first that is found. */
export function findBrowser(env: NodeJS.ProcessEnv = process.env): string | undefined {
  const wanted = env.PLATEWRIGHT_BROWSER;
  if (wanted !== undefined && wanted !== '') return isAbsolute(wanted) ? (isProgram(wanted) ? wanted : undefined) : inPath(wanted, env);
  return names.map(name => inPath(name, env)).find(path => path !== undefined) ?? places.find(isProgram);
}

function inPath(name: string, env: NodeJS.ProcessEnv): string | undefined {
  const ends = process.platform === 'win32' ? ['.exe'] : [''];
  const folders = (env.PATH ?? '').split(delimiter).filter(isAbsolute);
  return folders.flatMap(folder => ends.map(end => join(folder, name + end))).find(isProgram);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

const longestMs = 60_000;

/**
 * A printer that gives each page to the browser as a file of a temporary folder, with a profile of its own and no way to the network;
 * the typeface that pages ask for is put into them, whether it is installed or not.
 *
 * @throws Fault browser-not-found at once, before any work is done.
 */
export function pdfPrinter(env: NodeJS.ProcessEnv = process.env): PdfPrinter {
  const browser = findBrowser(env);
  if (browser === undefined) {
    const wanted = env.PLATEWRIGHT_BROWSER;
    throw new Fault(
      'browser-not-found',
      wanted
        ? `PLATEWRIGHT_BROWSER names "${wanted}", and there is no such program.`
        : 'No Chromium-family browser was found on this machine.',
    );
  }
  return async html => {
    const folder = await mkdtemp(join(tmpdir(), 'platewright-pdf-'));
    try {
      const page = join(folder, 'page.html');
      const pdf = join(folder, 'page.pdf');
      await writeFile(page, html.replace('</head>', `${await readingFontStyle()}</head>`));
      await runBrowser(browser, [...switches(folder), `--print-to-pdf=${pdf}`, pathToFileURL(page).href]);
      const bytes = await readFile(pdf).catch(() => undefined);
      if (bytes === undefined || bytes.subarray(0, 4).toString('latin1') !== '%PDF')
        throw new Fault('pdf-not-made', `"${browser}" ended without a PDF.`);
      return bytes;
    } finally {
      await rm(folder, { recursive: true, force: true, maxRetries: 3 });
    }
  };
}

function switches(folder: string): readonly string[] {
  return [
    '--headless',
    '--disable-gpu',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-extensions',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    '--no-pdf-header-footer',
    '--generate-pdf-document-outline',
    `--user-data-dir=${join(folder, 'profile')}`,
    // A browser refuses to run as root inside its sandbox; the page is our own and holds no script.
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ];
}

function runBrowser(browser: string, args: readonly string[]): Promise<void> {
  return new Promise((done, failed) => {
    const child = spawn(browser, args, { stdio: ['ignore', 'ignore', 'pipe'], timeout: longestMs, killSignal: 'SIGKILL' });
    let said = '';
    child.stderr.on('data', (text: Buffer) => {
      said = (said + text.toString()).slice(-500);
    });
    child.once('error', error => failed(new Fault('pdf-not-made', `"${browser}" cannot be started: ${error.message}.`)));
    child.once('close', (code, signal) => {
      if (code === 0) done();
      else if (signal !== null) failed(new Fault('pdf-not-made', `"${browser}" was ended after ${longestMs / 1000} seconds.`));
      else failed(new Fault('pdf-not-made', `"${browser}" ended with ${code}: ${said.trim().split('\n').at(-1) ?? ''}`));
    });
  });
}
