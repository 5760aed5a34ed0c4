import { dayText } from '../day.ts';
import type { GuidePage } from '../guidePage.ts';
import { htmlAttribute, htmlText } from './escape.ts';
import { outside } from './foodHtml.ts';
import { guideCss, pageCss } from './guideCss.ts';
import { wholePage } from './guideHtml.ts';

/** The first page of a site: its guides by category, the newest first. */
export function indexHtml(pages: readonly GuidePage[]): string {
  const alphabet = new Intl.Collator('en');
  const byCategory = [...Map.groupBy(pages, ({ category }) => category)].sort(([a], [b]) => alphabet.compare(a, b));
  const parts = byCategory.map(([category, here]) => {
    const newestFirst = [...here].sort((a, b) =>
      a.publishedOn === b.publishedOn ? alphabet.compare(a.title, b.title) : a.publishedOn < b.publishedOn ? 1 : -1,
    );
    return `<section>\n<h2 class="head">${outside(category)}</h2>\n${newestFirst.map(guideCard).join('')}</section>\n`;
  });
  return wholePage({
    title: 'Guides',
    description: 'Guides to foods, judged as they are eaten.',
    language: 'en',
    css: guideCss + pageCss({}),
    head: '<link rel="alternate" type="application/atom+xml" title="Changes" href="feed.xml">\n',
    main: `<main class="guide">\n<h1 class="title">Guides</h1>\n${parts.join('')}</main>\n`,
  });
}

function guideCard(page: GuidePage): string {
  const { id, title, purpose, counts, publishedOn, rule } = page;
  const at = `guides/${id}`;
  const more = [
    ['large print', 'large-print.html'],
    ['table (CSV)', 'csv'],
    ...(rule.line === undefined ? [] : [['pocket card', 'pocket-card.svg']]),
  ].map(([words, end]) => `<a href="${htmlAttribute(`${at}.${end}`)}">${words}<span> of ${htmlText(title)}</span></a>`);
  return `<article class="food">
<h3 class="name"><a href="${htmlAttribute(`${at}.html`)}">${outside(title)}</a></h3>
<p>${outside(purpose)}</p>
<p class="soft">Published ${dayText(publishedOn)}. ${counts.fits} of ${counts.read} foods fit.</p>
<p class="small">Also as: ${more.join(', ')}</p>
</article>
`;
}
