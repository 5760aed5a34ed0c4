import { describe, expect, it } from 'vitest';
import { cleanText, htmlAttribute, htmlText, safeUrl } from './escape.ts';

describe('text on its way into HTML', () => {
  it('[GDE-13] escapes what HTML reads as markup', () => {
    expect(htmlText('a < b & "c"')).toBe('a &lt; b &amp; "c"');
    expect(htmlAttribute(`"'<>&`)).toBe('&quot;&#39;&lt;&gt;&amp;');
  });

  it('[GDE-13] leaves out what turns or hides text, and keeps emoji with their joiners', () => {
    expect(cleanText('a\u202Eb\u200Fc\u0000d')).toBe('abcd');
    expect(cleanText('👩‍🍳')).toBe('👩‍🍳');
    expect(cleanText('\uD800')).toBe('\uFFFD');
  });

  it.each([
    ['HTTPS://A.example/x y?q="1"', 'https://a.example/x%20y?q=%221%22'],
    [' http://a.example:8080 ', 'http://a.example:8080'],
  ])('[GDE-12] %s becomes %s (RFC 3986)', (given, safe) => expect(safeUrl(given)).toBe(safe));

  it.each(['javascript:alert(1)', 'java\nscript:alert(1)', 'data:text/html,x', 'https://a.example@evil.example/', 'https:/a', 'x', ''])(
    '[GDE-12] %j is no link',
    given => expect(safeUrl(given)).toBeUndefined(),
  );
});
