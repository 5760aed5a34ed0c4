/** One thing that a screen reader says: what it is ("heading 2", "link"), and its words. */
export interface Spoken {
  readonly what: string;
  readonly words: string;
}

const landmarks: Readonly<Record<string, string>> = { MAIN: 'main part', NAV: 'navigation', HEADER: 'page head', FOOTER: 'page foot' };
const silent = new Set(['SCRIPT', 'STYLE', 'HEAD', 'TITLE', 'DESC']);
/** What stands in a line with the words around it. */
const inline = new Set(['A', 'B', 'BDI', 'I', 'EM', 'STRONG', 'SPAN', 'SMALL', 'BR', 'TEXT', 'TSPAN']);

/**
 * The things of a page in the order in which a screen reader meets them: landmarks, headings, lists, tables, pictures, links, text.
 * Elements that are hidden from it are left out.
 */
export function spokenOrder(page: Document): readonly Spoken[] {
  const said: Spoken[] = [];
  walk(page.body, said);
  return said;
}

function walk(element: Element, said: Spoken[]): void {
  if (silent.has(element.tagName) || element.getAttribute('aria-hidden') === 'true') return;
  const own = sayOf(element);
  if (own !== undefined) said.push(own);
  if (isPicture(element) || isHeading(element)) return;
  if (isLine(element)) {
    const words = wordsOf(element);
    if (words !== '') said.push({ what: element.closest('td, th') === null ? 'text' : cellName(element), words });
    for (const link of element.querySelectorAll('a[href]')) said.push({ what: 'link', words: wordsOf(link) });
    return;
  }
  for (const child of element.children) walk(child, said);
}

function sayOf(element: Element): Spoken | undefined {
  const { tagName } = element;
  if (landmarks[tagName] !== undefined) return { what: landmarks[tagName], words: element.getAttribute('aria-label') ?? '' };
  if (isHeading(element)) return { what: `heading ${tagName.slice(1)}`, words: wordsOf(element) };
  if (isPicture(element)) return { what: 'picture', words: pictureName(element) };
  if (tagName === 'UL' || tagName === 'OL') return { what: 'list', words: counted(element.children.length, 'item') };
  if (tagName === 'TABLE') return { what: 'table', words: counted(element.querySelectorAll('tr').length, 'row') };
  return undefined;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function isHeading({ tagName }: Element): boolean {
  return /^H[1-6]$/.test(tagName);
}

function isPicture(element: Element): boolean {
  return element.tagName === 'IMG' || element.tagName.toLowerCase() === 'svg';
}

/** Only words and what stands among words: it is read in one go. */
function isLine(element: Element): boolean {
  return [...element.children].every(child => inline.has(child.tagName.toUpperCase()));
}

function cellName(element: Element): string {
  return element.closest('th') === null ? 'cell' : 'heading of a row or column';
}

function pictureName(element: Element): string {
  return element.getAttribute('alt') ?? element.getAttribute('aria-label') ?? element.querySelector('title')?.textContent ?? '';
}

function wordsOf(element: Element): string {
  return (element.textContent ?? '').replace(/\s+/g, ' ').trim();
}
