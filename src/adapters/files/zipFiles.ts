import { strToU8, zipSync } from 'fflate';
import type { SiteFiles } from '#app/ports.ts';

/** The first day that a ZIP file can name: no date of the packing in it, so that the same files give the same bytes. */
const noDate = new Date(1980, 0, 1, 0, 0, 0);

/** Packs the files of a site into one ZIP file. */
export function zipFiles(files: SiteFiles): Uint8Array {
  const entries = [...files].map(([path, content]) => [path, typeof content === 'string' ? strToU8(content) : content] as const);
  return zipSync(Object.fromEntries(entries), { mtime: noDate });
}
