import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { buildGuide } from '../buildGuide.ts';
import { contrastRatio, leastTextContrast } from '../contrast.fixture.ts';
import { draftWith, guideInput, slices } from '../guideFixture.ts';
import { feedXml, sitemapXml } from './feedXml.ts';
import { guideCss } from './guideCss.ts';
import { guideFragment, guideHtml } from './guideHtml.ts';
import { jsonLd } from './jsonLd.ts';
import { indexHtml } from './siteHtml.ts';

const validator = new HtmlValidate({ extends: ['html-validate:standard', 'html-validate:a11y'] });
const complaints = async (html: string) =>
  (await validator.validateString(html)).results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));

/** Every text of a guide that comes from outside is this text. */
function pageOf(text: string) {
  const food = { ...slices('Mild', 80, 100, { maker: text, readAt: text }), name: text };
  const near = { ...slices('Near', 80, 230, { maker: text }), name: text };
  const draft = draftWith({
    title: text,
    purpose: text,
    whoItIsFor: text,
    author: { name: text, credentials: text },
    settingsNotes: { hemodialysis: text },
    aisles: [text],
    portionNotes: { mild: text },
    whereToBuy: { mild: [{ shop: text, aisle: text, price: text, url: 'https://a.example/?a=1&b="<x>"' }] },
    disclosures: [{ kind: 'affiliate', text }],
    cautions: [text],
    corrections: [{ on: '2026-11-16', text }],
    survey: { category: text, plateId: 'slices-on-bread', yardstickId: 'low-in-sodium-as-eaten' },
  });
  return buildGuide(guideInput([food, near], draft)).value;
}

const hostile = {
  HTML: '</h1></main><img src=x onerror=alert(1)><b>',
  script: '<script>alert(1)</script></script><script>',
  'JSON-LD end': '</script><!--<script>',
  style: '</style><style>*{display:none}',
  quotes: `" onclick="alert(1)" ' x='`,
  comment: '<!-- --> ]]> <![CDATA[ &amp; &#60; &lt',
  'right to left': 'abc\u202Edef\u2066ghi\u200F \u05D0\u05D1\u05D2',
  emoji: '👩‍🍳🥪 \u{E0041}',
  control: 'a\u0000b\u0008c\u001Bd\uFFFF\uD800e',
  formula: '=HYPERLINK("https://x.example")',
  'long word': 'x'.repeat(500),
  // biome-ignore lint/suspicious/noTemplateCurlyInString: hostile on purpose
  template: '{{7*7}} ${7*7} <%= 7 %>',
};

describe('a guide as HTML', () => {
  it.each(Object.entries(hostile))('[GDE-13] %s in every text from outside: valid by an HTML validator', async (_, text) => {
    const page = pageOf(text);
    expect(await complaints(guideHtml(page))).toEqual([]);
    expect(await complaints(guideHtml(page, { paper: 'letter', largePrint: true }))).toEqual([]);
    expect(await complaints(indexHtml([page]))).toEqual([]);
  });

  it.each(Object.entries(hostile))('[GDE-13] %s makes no element, no attribute and no turned text of its own', (_, text) => {
    const plain = tagsOf(pageOf('Plain'));
    const tags = tagsOf(pageOf(text));
    expect(new Set(tags)).toEqual(new Set(plain));
    const files = [
      guideHtml(pageOf(text)),
      guideFragment(pageOf(text)),
      feedXml([pageOf(text)]),
      sitemapXml([pageOf(text)], 'https://a.example/'),
    ];
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are looked for
    for (const file of files) expect(file).not.toMatch(/[\u0000-\u0008\u000B-\u001F\u202A-\u202E\u2066-\u2069\u200E\u200F\uFFFE\uFFFF]/);
  });

  it('[GDE-13] no text at all makes markup', () => {
    const plain = new Set(tagsOf(pageOf('Plain')));
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom('<', '>', '"', "'", '&', '/', '!', '-', 'a', ' ', '=') }),
    );
    fc.assert(
      fc.property(
        text.filter(one => /\S/.test(one)),
        one => {
          for (const tag of tagsOf(pageOf(`x${one}`))) expect(plain).toContain(tag);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('[GDE-14] stands alone: no script runs, nothing is loaded, every link is http(s) or inside the page', () => {
    const html = guideHtml(pageOf('Plain'));
    expect(html).toContain(`default-src 'none'`);
    expect([...html.matchAll(/<script[^>]*>/g)].map(([tag]) => tag)).toEqual(['<script type="application/ld+json">']);
    expect(html).not.toMatch(/\s(?:src|srcset|poster|on\w+)=|@import|url\(/);
    const links = [...html.matchAll(/href="([^"]*)"/g)].map(([, link]) => link!);
    expect(links.length).toBeGreaterThan(3);
    for (const link of links) expect(link).toMatch(/^(?:https:\/\/a\.example\/|#)/);
    const ids = new Set([...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => `#${id}`));
    for (const link of links.filter(one => one.startsWith('#'))) expect(ids).toContain(link);
  });

  it('[GDE-9] the paid link is named beside the link and told to search engines (16 CFR 255.5)', () => {
    expect(guideHtml(pageOf('Shop'))).toMatch(/rel="sponsored"><bdi>Shop<\/bdi><\/a> <b>\(paid link\)<\/b>/);
  });

  it('[GDE-15] every text color on every background reaches 4.5:1, on the screen and on paper (WCAG 2.2 SC 1.4.3)', () => {
    const roots = [...guideCss.matchAll(/\.guide\{(--[^}]*)/g)].map(([, body]) => body!);
    expect(roots.length).toBe(2);
    for (const body of roots) {
      const color = (name: string) => {
        const value = new RegExp(`--${name}:(#\\w+)`).exec(body)![1]!;
        return value.length === 4 ? value.replace(/\w/g, '$&$&') : value;
      };
      for (const text of ['ink', 'soft', 'link', 'fits', 'nearly'])
        for (const ground of ['paper', 'wash']) expect(contrastRatio(color(text), color(ground))).toBeGreaterThanOrEqual(leastTextContrast);
    }
  });

  it('[GDE-16] the same page gives the same bytes', () => {
    expect(guideHtml(pageOf('Plain'))).toBe(guideHtml(pageOf('Plain')));
  });

  // schema.org/ItemList: numberOfItems, and itemListElement as plain text. data/ext/pending/issue-1950.ttl of schemaorg/schemaorg: correction of a
  // CreativeWork, CorrectionComment as a kind of Comment. schema.org/author: author of a CreativeWork. The other terms from memory.
  it('[GDE-17] the JSON-LD uses the vocabulary of schema.org', () => {
    const thing = ['@type', 'name', 'description'];
    const known: Record<string, string[]> = {
      Article: [
        ...['@context', 'headline', 'inLanguage', 'datePublished', 'dateModified', 'isAccessibleForFree'],
        ...['author', 'audience', 'correction', 'mainEntity'],
      ],
      Person: ['honorificSuffix'],
      Audience: ['audienceType'],
      CorrectionComment: ['datePublished', 'text'],
      ItemList: ['numberOfItems', 'itemListElement'],
    };
    const check = (value: unknown): void => {
      if (Array.isArray(value)) value.forEach(check);
      else if (typeof value === 'object' && value !== null) {
        const type = (value as { '@type': string })['@type'];
        expect(Object.keys(known)).toContain(type);
        for (const [key, part] of Object.entries(value)) {
          expect([...thing, ...known[type]!]).toContain(key);
          check(part);
        }
      }
    };
    check(jsonLd(pageOf('Plain')));
    const [, json] = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(guideHtml(pageOf(hostile.script)))!;
    expect((JSON.parse(json!) as { headline: string }).headline).toBe(hostile.script);
  });
});

/** Tags with the names of their attributes, values set aside. */
function tagsOf(page: ReturnType<typeof pageOf>): string[] {
  return [
    ...guideHtml(page)
      .replace(/(<style>|<script[^>]*>)[\s\S]*?(?=<\/)/g, '$1')
      .matchAll(/<[^>]*>/g),
  ]
    .map(([tag]) => tag.replace(/"[^"]*"/g, '""'))
    .filter(tag => !/^<\/?(?:path|text)/.test(tag));
}
