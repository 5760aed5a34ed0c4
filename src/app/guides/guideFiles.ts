import type { GuidePage } from '#core/guide/guidePage.ts';
import { pocketCardSvg, slideChartSvg } from '#core/guide/html/cutOutSvg.ts';
import type { PageDress } from '#core/guide/html/guideCss.ts';
import { guideFragment, guideHtml } from '#core/guide/html/guideHtml.ts';
import { guideCsv } from './guideCsv.ts';

/** The end of each file's name; the guide's id goes before it. */
export const guideFileEnds = [
  'html',
  'large-print.html',
  'fragment.html',
  'csv',
  'pocket-card.svg',
  'slide-chart.svg',
  'a4.pdf',
  'letter.pdf',
  'large-print.a4.pdf',
  'large-print.letter.pdf',
] as const;
export type GuideFileEnd = (typeof guideFileEnds)[number];

/** A file as it is, or a page that a browser has to print. */
export type GuideFile = { readonly content: string } | { readonly print: string };

const paged: Partial<Record<GuideFileEnd, PageDress>> = {
  'a4.pdf': { paper: 'a4' },
  'letter.pdf': { paper: 'letter' },
  'large-print.a4.pdf': { paper: 'a4', largePrint: true },
  'large-print.letter.pdf': { paper: 'letter', largePrint: true },
};

/** One file of a guide; undefined for a card or chart of a yardstick that draws no line between energy and sodium. */
export function guideFile(page: GuidePage, end: GuideFileEnd): GuideFile | undefined {
  const { line } = page.rule;
  const dress = paged[end];
  if (dress !== undefined) return { print: guideHtml(page, dress) };
  const content = (): string | undefined => {
    if (end === 'html') return guideHtml(page);
    if (end === 'large-print.html') return guideHtml(page, { largePrint: true });
    if (end === 'fragment.html') return guideFragment(page);
    if (end === 'csv') return guideCsv(page);
    if (line === undefined) return undefined;
    return end === 'pocket-card.svg' ? pocketCardSvg(page, line) : slideChartSvg(page, line);
  };
  const made = content();
  return made === undefined ? undefined : { content: made };
}
