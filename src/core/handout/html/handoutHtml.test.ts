import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { buildHandout } from '../buildHandout.ts';
import { draftWith, handoutInput, noPhosphate, slices, sodiumTarget } from '../handoutFixture.ts';
import { handoutCss } from './handoutCss.ts';
import { handoutHtml } from './handoutHtml.ts';
import { handoutIndexHtml } from './indexHtml.ts';

const validator = new HtmlValidate({ extends: ['html-validate:standard', 'html-validate:a11y'] });
const complaints = async (html: string) =>
  (await validator.validateString(html)).results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));

/** Every text of a handout that comes from outside is this text. */
function pageOf(text: string, language: 'en' | 'es' = 'en') {
  const foods = [100, 900, undefined].map((mg, at) => ({
    ...slices(`Slices ${at}`, mg, { maker: text, readOn: text, statement: 'Chicken, water.' }),
    name: text,
  }));
  const draft = {
    ...draftWith({ language, prescription: { targets: [sodiumTarget, noPhosphate], signed: { by: 'x', on: '2026-11-14' } } }),
    title: text,
    reader: text,
    author: { name: text, credentials: text },
    callUs: text,
    notes: [text, text],
    aisleOrder: [text],
    avoidedFoods: [text],
    meals: [
      { name: text, percent: 30 },
      { name: 'dinner', percent: 30 },
    ],
    categories: [{ category: text, title: text, plateId: 'p', aisle: text, foodAisles: { [text]: text }, leftOut: [] }],
  };
  return buildHandout(handoutInput(foods, draft)).value;
}

const hostile = {
  HTML: '</h1></main><img src=x onerror=alert(1)><b>',
  script: '<script>alert(1)</script></script><script>',
  style: '</style><style>*{display:none}',
  quotes: `" onclick="alert(1)" ' x='`,
  comment: '<!-- --> ]]> <![CDATA[ &amp; &#60; &lt',
  'right to left': 'abc\u202Edef\u2066ghi\u200F \u05D0\u05D1\u05D2',
  emoji: '👩‍🍳🥪 \u{E0041}',
  control: 'a\u0000b\u0008c\u001Bd\uFFFF\uD800e',
  'the mark of a food': '\uFFFC \uFFFC.\uFFFC',
  'long word': 'x'.repeat(500),
  blank: ' ',
};

describe('a handout as HTML', () => {
  it.each(Object.entries(hostile))('[HND-14] %s in every text from outside: valid by an HTML validator', async (name, text) => {
    const page = pageOf(text);
    const allowed = name === 'blank' ? /^(?:empty-(?:heading|title)|text-content|wcag)/ : /^$/;
    for (const html of [
      handoutHtml(page),
      handoutHtml(page, { paper: 'letter', largePrint: true }),
      handoutHtml(pageOf(text, 'es')),
      handoutIndexHtml([page]),
    ])
      expect((await complaints(html)).filter(one => !allowed.test(one))).toEqual([]);
  });

  it('[HND-14] law: no text from outside makes an element, an attribute, or turns the text around it', () => {
    const shape = (html: string) => html.slice(html.indexOf('<body>')).replace(/>[^<]*</g, '><');
    const plain = shape(handoutHtml(pageOf('plain')));
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }), text => {
        const html = handoutHtml(pageOf(`x${text}`));
        expect(shape(html)).toBe(plain);
        expect(html).not.toMatch(/[\u202A-\u202E\u2066-\u2069\u200E\u200F]/);
      }),
      { numRuns: 60 },
    );
  });

  it('[HND-14] needs nothing but itself: no script, a policy that forbids all but its own style', () => {
    const html = handoutHtml(pageOf('plain'));
    expect(html).toContain(
      `content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'"`,
    );
    expect(html).not.toMatch(/<script|<link|\ssrc=|url\(|@import/);
  });

  it('[HND-16] same page, same bytes', () => {
    for (const dress of [{}, { largePrint: true, paper: 'a4' as const }])
      expect(handoutHtml(pageOf('a'), dress)).toBe(handoutHtml(pageOf('a'), dress));
  });

  it('[HND-10] a Spanish page says so, and names from labels say that they are English', () => {
    const html = handoutHtml(pageOf('Turkey', 'es'));
    expect(html).toContain('<html lang="es-US">');
    expect(html).toContain('<b><bdi lang="en">Turkey</bdi></b>');
    expect(handoutHtml(pageOf('Turkey'))).not.toContain('lang="en">Turkey');
  });

  it('[HND-17] has no color of its own: those of the guides, whose contrast is tested there', () => {
    const own = handoutCss({}).split('.handout{')[1]!;
    expect(own.replace(/html\{[^}]*\}/g, '')).not.toMatch(/#[0-9a-f]{3,6}\b|rgb/i);
  });
});
