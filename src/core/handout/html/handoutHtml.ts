import { htmlAttribute, htmlText } from '#core/guide/html/escape.ts';
import type { PageDress } from '#core/guide/html/guideCss.ts';
import { wholePage } from '#core/guide/html/guideHtml.ts';
import type { Language } from '../handout.ts';
import type { Block, HandoutPage, Section } from '../handoutPage.ts';
import { lineText } from '../line.ts';
import { blocksHtml, lineHtml } from './blockHtml.ts';
import { handoutCss } from './handoutCss.ts';

export const htmlLanguage: Readonly<Record<Language, string>> = { en: 'en', es: 'es-US' };

/**
 * The whole handout in one file: no script, nothing loaded from anywhere, opens from disk, prints. The fridge page, where there is one,
 * is the first printed page. Same page, same bytes.
 */
export function handoutHtml(page: HandoutPage, dress: PageDress = {}): string {
  const { language, title, about, sections } = page;
  const fridge = sections.find(({ id }) => id === 'fridge');
  const others = sections.filter(({ id }) => id !== 'fridge');
  const heading = `<h1 class="title">${lineHtml(title, language)}</h1>\n`;
  const imprint = `<ul class="about soft">\n${about.map(one => `<li>${lineHtml(one, language)}</li>`).join('\n')}\n</ul>\n`;
  return wholePage({
    title: lineText(title),
    description: about.map(lineText).join('. '),
    language: htmlLanguage[language],
    css: handoutCss(dress),
    head: '',
    main: `<main class="guide handout${dress.largePrint ? ' large' : ''}">
${fridge === undefined ? heading : `<div class="first">\n${heading}${fridgeHtml(fridge, page)}</div>\n`}${imprint}${others.map(one => sectionHtml(one, page)).join('')}</main>
`,
  });
}

function idOf({ id }: HandoutPage, section: Section): string {
  return htmlAttribute(`${id}-${section.id}`);
}

function sectionHtml(section: Section, page: HandoutPage): string {
  const id = idOf(page, section);
  return `<section aria-labelledby="${id}">
<h2 class="head" id="${id}">${htmlText(section.title)}</h2>
${blocksHtml(section.blocks, 3, page.language)}</section>
`;
}

/**
 * Each heading of the fridge page with what follows it is a card: numbers, words to look for, picks, calls. Picks stand beside the two
 * before them; calls, and a table of several nutrients, take the whole width.
 */
function fridgeHtml(section: Section, page: HandoutPage): string {
  const cards: Block[][] = [];
  for (const block of section.blocks) {
    if (block.kind === 'heading' || cards.length === 0) cards.push([block]);
    else cards.at(-1)!.push(block);
  }
  const wideTable = cards[0]!.some(block => block.kind === 'table' && block.head.length > 2);
  const look = (at: number): string => {
    if (at === cards.length - 1 || (at === 0 && wideTable)) return 'card wide';
    return at === 2 && !wideTable ? 'card beside' : 'card';
  };
  const body = cards.map((blocks, at) => `<div class="${look(at)}">\n${blocksHtml(blocks, 3, page.language)}</div>\n`);
  const id = idOf(page, section);
  return `<section class="fridge${wideTable ? ' full' : ''}" aria-labelledby="${id}">
<h2 class="head" id="${id}">${htmlText(section.title)}</h2>
<div class="cards">
${body.join('')}</div>
</section>
`;
}
