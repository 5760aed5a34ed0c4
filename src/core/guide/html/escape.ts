/**
 * Text from labels and authors on its way into HTML and XML. What the letters look like is kept; what could run, hide or turn other
 * text around is not.
 */

/**
 * Left out altogether: control characters (tab and line ends become a blank), marks and overrides of writing direction (U+061C, U+200E,
 * U+200F, U+202A to U+202E, U+2066 to U+2069), invisible fillers, tags, noncharacters. Joiners inside emoji stay. A broken
 * surrogate becomes U+FFFD. Source: Unicode Standard Annex 9 (directional formatting characters), XML 1.0 (allowed characters).
 */
export function cleanText(text: string): string {
  return text
    .toWellFormed()
    .replace(/[\t\n\r\u0085\u2028\u2029]+/g, ' ')
    .replace(/[\p{Cc}\u00AD\u061C\u180E\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]/gu, '')
    .replace(/[\p{Noncharacter_Code_Point}\u{E0000}-\u{E0FFF}]/gu, '');
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text between tags. `a < b & "c"` becomes `a &lt; b &amp; "c"`. */
export function htmlText(text: string): string {
  return cleanText(text).replace(/[&<>]/g, sign => entities[sign]!);
}

/** Text inside an attribute that stands in quotation marks; also good for XML. */
export function htmlAttribute(text: string): string {
  return cleanText(text).replace(/[&<>"']/g, sign => entities[sign]!);
}

/** A value inside `<script type="application/ld+json">`: JSON in which no `<` can end the element. */
export function scriptJson(value: unknown): string {
  const clean = (_: string, one: unknown) => (typeof one === 'string' ? cleanText(one) : one);
  return JSON.stringify(value, clean).replace(/[<>&\u2028\u2029]/g, sign => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

const longestUrl = 2000;

/**
 * A web address with http or https and a host, everything else than letters, digits and URL punctuation percent-encoded (RFC 3986);
 * undefined for `javascript:`, `data:`, paths, and addresses with a user name, which pass one host off as another.
 */
export function safeUrl(url: string): string | undefined {
  const match = /^(https?):\/\/([^/?#\\]+)([/?#].*)?$/isu.exec(url.trim());
  if (match === null || url.length > longestUrl) return undefined;
  const [, scheme = '', host = '', rest = ''] = match;
  if (!/^[a-z0-9](?:[a-z0-9.-]*[a-z0-9])?(?::\d{1,5})?$/i.test(host)) return undefined;
  const encoded = rest
    .toWellFormed()
    .replace(/[^A-Za-z0-9\-._~:/?#[\]@!$&()*+,;=%]/gu, sign => encodeURIComponent(sign).replace("'", '%27'));
  return `${scheme.toLowerCase()}://${host.toLowerCase()}${encoded}`;
}
