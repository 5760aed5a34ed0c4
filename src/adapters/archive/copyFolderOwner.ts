import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { storageFault } from '#adapters/storage/faults.ts';
import { Fault } from '#core/errors.ts';

/** Says whose copies lie in a folder of choice: old ones are swept, and those of another workspace must not be. */
const markName = '.platewright-copies.json';
const markSchema = z.object({ workspace: z.string() });

/**
 * By day; one that was asked for on a day that has its copy carries the time as well. Where client records lie in it with the key that
 * opens them, whoever sees the file is to know.
 */
export const copyName = /^platewright-copy-(\d{4}-\d\d-\d\d(?:-\d{6})?)(-unlocked)?\.zip$/;

/** The name that stands in a folder of its own, where its memory was lost; a new one at a first start. */
export function workspaceName(ownFolder: string): string {
  return ownerOf(ownFolder) ?? randomUUID();
}

/** @throws Fault copies-folder-taken when another workspace has marked the folder */
export function refuseForeign(folder: string, workspace: string): void {
  const owner = ownerOf(folder);
  if (owner !== undefined && owner !== workspace) throw taken(folder);
}

/** Marks a folder that nobody has. One without a mark in which copies lie is another's, unless it is `known`. @throws Fault copies-folder-taken */
export function claim(folder: string, workspace: string, isKnown: boolean): void {
  refuseForeign(folder, workspace);
  if (ownerOf(folder) === workspace) return;
  if (!isKnown && readdirSync(folder).some(name => copyName.test(name))) throw taken(folder);
  const mark = join(folder, markName);
  try {
    // Never through a link, nor over what stands there.
    writeFileSync(mark, `${JSON.stringify({ workspace })}\n`, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') {
      if (ownerOf(folder) === workspace) return;
      throw new Fault('copies-folder-taken', `"${folder}" has a file ${markName} that cannot be read.`);
    }
    rmSync(mark, { force: true });
    throw storageFault(error);
  }
}

export function isOf(folder: string, workspace: string): boolean {
  return ownerOf(folder) === workspace;
}

/** Undefined where there is no mark, or none that can be read. */
function ownerOf(folder: string): string | undefined {
  try {
    return markSchema.parse(JSON.parse(readFileSync(join(folder, markName), 'utf8'))).workspace;
  } catch {
    return undefined;
  }
}

function taken(folder: string): Fault {
  return new Fault('copies-folder-taken', `The copies in "${folder}" are those of another workspace.`);
}
