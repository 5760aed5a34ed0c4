import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { Fault } from '#core/errors.ts';

/** Says whose copies lie in a folder of choice: old ones are swept, and those of another workspace must not be. */
const markName = '.platewright-copies.json';
const markSchema = z.object({ workspace: z.string() });

/**
 * By day; one that was asked for on a day that has its copy carries the time as well. Where client records lie in it with the key that
 * opens them, whoever sees the file is to know.
 */
export const copyName = /^platewright-copy-(\d{4}-\d\d-\d\d(?:-\d{6})?)(-unlocked)?\.zip$/;

export function newWorkspaceName(): string {
  return randomUUID();
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
  writeFileSync(join(folder, markName), `${JSON.stringify({ workspace })}\n`, { mode: 0o600 });
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
