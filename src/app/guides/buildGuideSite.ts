import { Fault, type Issue, type Reading } from '#core/errors.ts';
import { buildGuide } from '#core/guide/buildGuide.ts';
import type { GuideInput } from '#core/guide/guide.ts';
import type { GuidePage } from '#core/guide/guidePage.ts';
import { safeUrl } from '#core/guide/html/escape.ts';
import { feedXml, sitemapXml } from '#core/guide/html/feedXml.ts';
import { indexHtml } from '#core/guide/html/siteHtml.ts';
import type { PdfPrinter, SiteFiles } from '../ports.ts';
import { unwatched, type Watch } from '../watch.ts';
import { guideFile, guideFileEnds } from './guideFiles.ts';

const pdfsAGuide = guideFileEnds.filter(end => end.endsWith('.pdf')).length;

export interface GuideSiteInput {
  readonly guides: readonly GuideInput[];
  /** Where the site will be found, for what needs full addresses. */
  readonly siteUrl?: string;
  readonly printPdf?: PdfPrinter;
  readonly watch?: Watch;
}

/**
 * Every file of a site of guides by its path, as a static host serves it. The same input gives the same bytes, PDF aside.
 *
 * @throws Fault work-cancelled, guide-not-valid for two guides of one id, unknown-option for an address that is none; what the printer of PDFs throws.
 */
export async function buildGuideSite({ guides, siteUrl, printPdf, watch = unwatched }: GuideSiteInput): Promise<Reading<SiteFiles>> {
  const site = siteUrl === undefined ? undefined : siteFolder(siteUrl);
  const built = guides.map(buildGuide);
  const pages = built.map(({ value }) => value);
  refuseTwins(pages);
  let printed = 0;
  const files = new Map<string, string | Uint8Array>();
  files.set('index.html', indexHtml(pages));
  files.set('feed.xml', feedXml(pages, site));
  if (site !== undefined) files.set('sitemap.xml', sitemapXml(pages, site));
  for (const page of pages) {
    for (const end of guideFileEnds) {
      if (printPdf === undefined && end.endsWith('.pdf')) continue;
      const file = guideFile(page, end);
      if (file === undefined) continue;
      if ('content' in file) files.set(`guides/${page.id}.${end}`, file.content);
      else if (printPdf !== undefined) {
        await watch.step('Printing to PDF', printed++, pages.length * pdfsAGuide);
        files.set(`guides/${page.id}.${end}`, await printPdf(file.print));
      }
    }
  }
  const issues: Issue[] = built.flatMap(one => one.issues);
  return { value: files, issues };
}

function refuseTwins(pages: readonly GuidePage[]): void {
  const seen = new Set<string>();
  for (const { id } of pages) {
    if (seen.has(id)) throw new Fault('guide-not-valid', `Two guides have the id "${id}"; it names their files.`);
    seen.add(id);
  }
}

/** The address with a slash at its end, so that a path can follow. */
function siteFolder(siteUrl: string): string {
  const safe = safeUrl(siteUrl);
  if (safe === undefined || /[?#]/.test(safe)) {
    throw new Fault('unknown-option', `"${siteUrl}" is no address of a site: it begins with http:// or https:// and has no "?" or "#".`);
  }
  return safe.endsWith('/') ? safe : `${safe}/`;
}
