import { Fault, type Issue, type Reading } from '#core/errors.ts';
import { buildGuide } from '#core/guide/buildGuide.ts';
import type { GuideInput } from '#core/guide/guide.ts';
import type { GuidePage } from '#core/guide/guidePage.ts';
import { pocketCardSvg, slideChartSvg } from '#core/guide/html/cutOutSvg.ts';
import { safeUrl } from '#core/guide/html/escape.ts';
import { feedXml, sitemapXml } from '#core/guide/html/feedXml.ts';
import type { PageDress } from '#core/guide/html/guideCss.ts';
import { guideFragment, guideHtml } from '#core/guide/html/guideHtml.ts';
import { indexHtml } from '#core/guide/html/siteHtml.ts';
import { guideCsv } from './guideCsv.ts';
import type { PdfPrinter, SiteFiles } from './ports.ts';

export interface GuideSiteInput {
  readonly guides: readonly GuideInput[];
  /** Where the site will be found, for what needs full addresses. */
  readonly siteUrl?: string;
  readonly printPdf?: PdfPrinter;
}

/** Names of the PDF files of a guide, and how each is dressed. */
const pdfs: readonly (readonly [end: string, dress: PageDress])[] = [
  ['a4.pdf', { paper: 'a4' }],
  ['letter.pdf', { paper: 'letter' }],
  ['large-print.a4.pdf', { paper: 'a4', largePrint: true }],
  ['large-print.letter.pdf', { paper: 'letter', largePrint: true }],
];

/**
 * Every file of a site of guides by its path, as a static host serves it. The same input gives the same bytes, PDF aside.
 *
 * @throws Fault guide-not-valid for two guides of one id, unknown-option for an address that is none; what the printer of PDFs throws.
 */
export async function buildGuideSite({ guides, siteUrl, printPdf }: GuideSiteInput): Promise<Reading<SiteFiles>> {
  const site = siteUrl === undefined ? undefined : siteFolder(siteUrl);
  const built = guides.map(buildGuide);
  const pages = built.map(({ value }) => value);
  refuseTwins(pages);
  const files = new Map<string, string | Uint8Array>();
  files.set('index.html', indexHtml(pages));
  files.set('feed.xml', feedXml(pages, site));
  if (site !== undefined) files.set('sitemap.xml', sitemapXml(pages, site));
  for (const page of pages) {
    for (const [end, content] of pageFiles(page)) files.set(`guides/${page.id}.${end}`, content);
    if (printPdf === undefined) continue;
    for (const [end, dress] of pdfs) files.set(`guides/${page.id}.${end}`, await printPdf(guideHtml(page, dress)));
  }
  const issues: Issue[] = built.flatMap(one => one.issues);
  return { value: files, issues };
}

function pageFiles(page: GuidePage): readonly (readonly [end: string, content: string])[] {
  const { line } = page.rule;
  const chart = line === undefined ? undefined : slideChartSvg(page, line);
  return [
    ['html', guideHtml(page)],
    ['large-print.html', guideHtml(page, { largePrint: true })],
    ['fragment.html', guideFragment(page)],
    ['csv', guideCsv(page)],
    ...(line === undefined ? [] : [['pocket-card.svg', pocketCardSvg(page, line)] as const]),
    ...(chart === undefined ? [] : [['slide-chart.svg', chart] as const]),
  ];
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
