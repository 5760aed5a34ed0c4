import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import type { PdfPrinter } from '#app/ports.ts';
import { Fault } from '#core/errors.ts';
import { isObject } from '#core/json/presentForm.ts';
import { BrowserPipe } from './browserPipe.ts';
import { findBrowser } from './findBrowser.ts';
import { readingFontStyle } from './readingFont.ts';
import { Turns } from './turns.ts';
import { beginUnfinished, endUnfinished, sweepUnfinished, unfinishedName } from './unfinished.ts';

const longestMs = 60_000;

/** A browser takes some 200 MB while it prints. */
const turns = new Turns(2);

const profilePrefix = 'platewright-pdf-';
const running = new Set<ChildProcess>();
process.on('exit', () => {
  for (const child of running) kill(child);
});

/** Removes the browser profiles that killed programs of this user left behind. They hold nothing of a page. */
export function sweepProfiles(): Promise<void> {
  return sweepUnfinished(tmpdir(), profilePrefix);
}

/**
 * A printer that hands each page to a browser of its own through a pipe and takes the PDF back the same way: neither ever is a file, for
 * pages may tell of a client. The browser has an empty profile and no way to the network; the typeface that pages ask for is put into
 * them, whether it is installed or not. An aborted `wanted` ends it: nobody
 * waits for the page any more.
 *
 * @throws Fault browser-not-found at once, before any work is done.
 */
export function pdfPrinter(env: NodeJS.ProcessEnv = process.env, wanted = new AbortController().signal): PdfPrinter {
  const browser = findBrowser(env);
  if (browser === undefined) {
    const named = env.PLATEWRIGHT_BROWSER;
    throw new Fault(
      'browser-not-found',
      named
        ? `PLATEWRIGHT_BROWSER names "${named}", and there is no such program.`
        : 'No Chromium-family browser was found on this machine.',
    );
  }
  return async html => {
    try {
      return await turns.run(wanted, () => printed(browser, html, wanted));
    } catch (error) {
      if (wanted.aborted) throw new Fault('work-cancelled', 'The PDF is no longer wanted.');
      throw error;
    }
  };
}

async function printed(browser: string, html: string, wanted: AbortSignal): Promise<Uint8Array> {
  const profile = await mkdtemp(join(tmpdir(), unfinishedName(profilePrefix)));
  beginUnfinished(profile);
  // A group of its own: what the browser starts ends with it, and Ctrl-C reaches it through us alone.
  const stdio = ['ignore', 'ignore', 'pipe', 'pipe', 'pipe'] as const;
  const child = spawn(browser, switches(profile), { stdio: [...stdio], detached: process.platform !== 'win32' });
  running.add(child);
  const ended = new Promise<void>(done => child.once('exit', () => done()));
  const failing = new Promise<never>((_, failed) => child.once('error', failed));
  let said = '';
  child.stderr?.on('data', (text: Buffer) => {
    said = (said + text.toString()).slice(-500);
  });
  const late = AbortSignal.timeout(longestMs);
  const stop = (): void => kill(child);
  for (const signal of [wanted, late]) signal.addEventListener('abort', stop, { once: true });
  if (wanted.aborted) stop();
  try {
    return await Promise.race([page(child, html), failing]);
  } catch (error) {
    if (late.aborted) throw new Fault('pdf-not-made', `"${browser}" was ended after ${longestMs / 1000} seconds.`);
    const last = said.trim().split('\n').at(-1) ?? '';
    throw new Fault('pdf-not-made', `"${browser}" made no PDF: ${error instanceof Error ? error.message : ''} ${last}`.trim());
  } finally {
    wanted.removeEventListener('abort', stop);
    kill(child);
    if (child.pid !== undefined) await ended;
    running.delete(child);
    await rm(profile, { recursive: true, force: true, maxRetries: 3 });
    endUnfinished(profile);
  }
}

async function page(child: ChildProcess, html: string): Promise<Uint8Array> {
  const [, , , out, back] = child.stdio;
  if (!(out instanceof Writable && back instanceof Readable)) throw new Error('it has no pipes');
  const pipe = new BrowserPipe(out, back);
  const { targetId } = await pipe.ask('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await pipe.ask('Target.attachToTarget', { targetId, flatten: true });
  if (typeof sessionId !== 'string') throw new Error('it opened no page');
  const ask = (method: string, params?: Record<string, unknown>) => pipe.ask(method, params, sessionId);
  // The page is our own and holds no script.
  await ask('Emulation.setScriptExecutionDisabled', { value: true });
  const { frameTree } = await ask('Page.getFrameTree');
  const frame = isObject(frameTree) && isObject(frameTree.frame) ? frameTree.frame.id : undefined;
  await ask('Page.setDocumentContent', { frameId: frame, html: html.replace('</head>', `${await readingFontStyle()}</head>`) });
  // A page that asks for what it may not have is drawn once that has been refused; before, paper would be blank.
  const isWhole = async (): Promise<boolean> => {
    const { result } = await ask('Runtime.evaluate', { expression: "document.readyState === 'complete'" });
    return isObject(result) && result.value === true;
  };
  while (!(await isWhole())) await setTimeout(10);
  const arrived = 'Promise.all([document.fonts.ready, ...[...document.images].map(image => image.decode().catch(() => undefined))])';
  await ask('Runtime.evaluate', { expression: `${arrived}.then(() => true)`, awaitPromise: true });
  const { data } = await ask('Page.printToPDF', {
    printBackground: true,
    preferCSSPageSize: true,
    generateTaggedPDF: true,
    generateDocumentOutline: true,
    // As a stream it would be a file for a while.
    transferMode: 'ReturnAsBase64',
  });
  const pdf = Buffer.from(typeof data === 'string' ? data : '', 'base64');
  if (pdf.subarray(0, 4).toString('latin1') !== '%PDF') throw new Error('what it gave back is none');
  return pdf;
}

function switches(profile: string): readonly string[] {
  return [
    '--headless',
    '--remote-debugging-pipe',
    '--incognito',
    '--disk-cache-size=1',
    '--disable-gpu',
    '--disable-breakpad',
    '--disable-crash-reporter',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-extensions',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    `--user-data-dir=${profile}`,
    // A browser refuses to run as root inside its sandbox; the page is our own and holds no script.
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ];
}

/** The browser with all that it started. */
function kill(child: ChildProcess): void {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  try {
    if (process.platform === 'win32') child.kill('SIGKILL');
    else process.kill(-child.pid, 'SIGKILL');
  } catch {
    // It has ended by itself meanwhile.
  }
}
