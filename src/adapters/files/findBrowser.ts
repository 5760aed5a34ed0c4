import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';

/** Browsers that print to a tagged PDF, by the names they have in a PATH. */
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
