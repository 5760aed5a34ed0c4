import { dayText } from '#core/guide/day.ts';
import { htmlAttribute, htmlText } from '#core/guide/html/escape.ts';
import { wholePage } from '#core/guide/html/guideHtml.ts';
import type { HandoutPage } from '../handoutPage.ts';
import { lineText } from '../line.ts';
import { lineHtml } from './blockHtml.ts';
import { handoutCss } from './handoutCss.ts';
import { htmlLanguage } from './handoutHtml.ts';

/** The first page of a folder of handouts, for whoever prints them. */
export function handoutIndexHtml(pages: readonly HandoutPage[]): string {
  const alphabet = new Intl.Collator('en');
  const cards = [...pages].sort((a, b) => alphabet.compare(a.id, b.id)).map(cardHtml);
  return wholePage({
    title: 'Handouts',
    description: 'Handouts to open and to print.',
    language: 'en',
    css: handoutCss({}),
    head: '',
    main: `<main class="guide handout">\n<h1 class="title">Handouts</h1>\n${cards.join('')}</main>\n`,
  });
}

function cardHtml({ id, title, about, language, writtenOn }: HandoutPage): string {
  const lang = language === 'en' ? '' : ` lang="${htmlLanguage[language]}"`;
  const setting = about.filter(({ by, runs }) => by === 'program' && runs.length === 1 && runs[0]?.kind === 'words').at(0);
  return `<article class="food">
<h2 class="name"${lang}><a href="${htmlAttribute(`${id}.html`)}">${lineHtml(title, language)}</a></h2>
${setting === undefined ? '' : `<p${lang}>${lineHtml(setting, language)}</p>\n`}<p class="soft">Written ${htmlText(dayText(writtenOn))}. <a href="${htmlAttribute(`${id}.large-print.html`)}">Large print<span> of ${htmlText(lineText(title))}</span></a></p>
</article>
`;
}
