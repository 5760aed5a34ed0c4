import type { Day } from '#core/quantity/calendarDay.ts';
import type { GuidePage } from '../guidePage.ts';
import { htmlAttribute } from './escape.ts';

interface Change {
  readonly on: Day;
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly author: string;
  readonly guideId: string;
}

/** What happened to the guides, newest first, as Atom (RFC 4287): each published, each correction. Days are told at midnight UTC. */
export function feedXml(pages: readonly GuidePage[], siteUrl?: string): string {
  const authority = siteUrl === undefined ? 'guides.invalid' : hostOf(siteUrl);
  // RFC 4151: a name that stays the same wherever the page is moved. Without an address of its own the site takes a host that RFC 2606 keeps free.
  const tag = (day: Day, name: string): string => `tag:${authority},${day}:${name}`;
  const changes = pages.flatMap((page): Change[] => {
    const common = { author: page.author.name, guideId: page.id };
    const corrections = page.corrections.toReversed().map(({ on, text }, index) => ({
      ...common,
      on,
      id: tag(page.publishedOn, `guides/${page.id}/correction-${index + 1}`),
      title: `Corrected: ${page.title}`,
      text,
    }));
    const published = { on: page.publishedOn, id: tag(page.publishedOn, `guides/${page.id}`), title: page.title, text: page.purpose };
    return [{ ...common, ...published }, ...corrections];
  });
  const newestFirst = changes.sort((a, b) => (a.on === b.on ? (a.id < b.id ? -1 : 1) : a.on < b.on ? 1 : -1));
  const updated = newestFirst[0]?.on ?? '1970-01-01';
  const at = (path: string): string => htmlAttribute(`${siteUrl ?? ''}${path}`);
  return `<?xml version="1.0" encoding="utf-8"?>
<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">
<id>${htmlAttribute(tag(newestFirst.at(-1)?.on ?? updated, 'guides'))}</id>
<title>Guides: what changed</title>
<updated>${updated}T00:00:00Z</updated>
<link rel="alternate" type="text/html" href="${at('index.html')}"/>
<link rel="self" type="application/atom+xml" href="${at('feed.xml')}"/>
${newestFirst.map(change => entry(change, at)).join('')}</feed>
`;
}

function entry({ on, id, title, text, author, guideId }: Change, at: (path: string) => string): string {
  return `<entry>
<id>${htmlAttribute(id)}</id>
<title>${htmlAttribute(title)}</title>
<updated>${on}T00:00:00Z</updated>
<author><name>${htmlAttribute(author)}</name></author>
<link rel="alternate" type="text/html" href="${at(`guides/${guideId}.html`)}"/>
<summary>${htmlAttribute(text)}</summary>
</entry>
`;
}

/** All pages with the day of their last change (sitemaps.org, protocol 0.9). It needs full addresses. */
export function sitemapXml(pages: readonly GuidePage[], siteUrl: string): string {
  const changed = ({ publishedOn, corrections }: GuidePage): Day => [publishedOn, ...corrections.map(({ on }) => on)].sort().at(-1)!;
  const rows = pages.map(page => ({ path: `guides/${page.id}.html`, on: changed(page) }));
  const newest = rows
    .map(({ on }) => on)
    .sort()
    .at(-1);
  const all = newest === undefined ? rows : [{ path: 'index.html', on: newest }, ...rows];
  return `<?xml version="1.0" encoding="utf-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
${all.map(({ path, on }) => `<url><loc>${htmlAttribute(siteUrl + path)}</loc><lastmod>${on}</lastmod></url>\n`).join('')}</urlset>
`;
}

function hostOf(siteUrl: string): string {
  return siteUrl.replace(/^https?:\/\//, '').replace(/[:/].*$/s, '');
}
