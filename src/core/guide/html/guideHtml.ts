import { dayText } from '../day.ts';
import type { GuideEntry, GuidePage, WorkedExample } from '../guidePage.ts';
import { pocketCardSvg, slideChartSvg } from './cutOutSvg.ts';
import { htmlAttribute, htmlText, scriptJson } from './escape.ts';
import { entryHtml, outside } from './foodHtml.ts';
import { guideCss, type PageDress, pageCss } from './guideCss.ts';
import { jsonLd } from './jsonLd.ts';

/**
 * The whole page in one file: no script, nothing loaded from anywhere, opens from disk, prints. The policy in its head forbids what
 * it does not need, whatever a text in it may try. Same page, same bytes.
 */
export function guideHtml(page: GuidePage, dress: PageDress = {}): string {
  return wholePage({
    title: page.title,
    description: page.purpose,
    language: page.language,
    css: guideCss + pageCss(dress),
    head: `<script type="application/ld+json">${scriptJson(jsonLd(page))}</script>\n`,
    main: bodyHtml(page, 1, 'main', dress.largePrint ?? false),
  });
}

/** The same to paste into a page of a site builder: its headings begin at the second level, its look touches nothing else. */
export function guideFragment(page: GuidePage): string {
  return `<style>\n${guideCss}</style>\n${bodyHtml(page, 2, 'div', false)}`;
}

export interface WholePage {
  readonly title: string;
  readonly description: string;
  readonly language: string;
  readonly css: string;
  readonly head: string;
  readonly main: string;
}

export function wholePage({ title, description, language, css, head, main }: WholePage): string {
  return `<!DOCTYPE html>
<html lang="${htmlAttribute(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="referrer" content="no-referrer">
<title>${htmlText(title)}</title>
<meta name="description" content="${htmlAttribute(description)}">
<style>
${css}</style>
${head}</head>
<body>
${main}</body>
</html>
`;
}

/** `level` is that of the page's title. */
function bodyHtml(page: GuidePage, level: number, element: 'main' | 'div', large: boolean): string {
  const part = (title: string, body: string, id: string, more = ''): string =>
    body === ''
      ? ''
      : `<section${more}>\n<h${level + 1} class="head" id="${htmlAttribute(`${page.id}-${id}`)}">${title}</h${level + 1}>\n${body}</section>\n`;
  const foods = (entries: readonly GuideEntry[], at: number): string =>
    entries.length === 0 ? '' : `<div class="foods">\n${entries.map(entry => entryHtml(entry, at)).join('')}</div>\n`;
  const links: string[] = [];
  const linked = (title: string, body: string, id: string, more = ''): string => {
    if (body !== '') links.push(`<li><a href="#${htmlAttribute(`${page.id}-${id}`)}">${title}</a></li>`);
    return part(title, body, id, more);
  };
  const parts = [
    linked('For each treatment', settingsHtml(page), 'settings'),
    ...page.sections.map(({ title, entries }, at) => linked(outside(title), foods(entries, level + 2), `foods-${at + 1}`)),
    linked('Nearly', foods(page.nearly, level + 2), 'nearly'),
    linked('Taken off since publication', takenOffHtml(page), 'taken-off'),
    linked('What was left out, and why', leftOutHtml(page), 'left-out'),
    linked('Please note', list(page.cautions), 'cautions'),
    linked('Corrections', correctionsHtml(page), 'corrections'),
    linked('To cut out', cutOutHtml(page), 'cut-out', ' class="cut"'),
  ];
  return `<${element} class="guide${large ? ' large' : ''}">
<p class="soft">${headline(page)}</p>
<h${level} class="title">${htmlText(page.title)}</h${level}>
<p class="lead">${htmlText(page.purpose)}</p>
${paragraphs(page.whoItIsFor)}<p>By ${outside(page.author.name)}${page.author.credentials === undefined ? '' : `, ${outside(page.author.credentials)}`}. Published ${dayText(page.publishedOn)}.</p>
${disclosuresHtml(page)}${ruleHtml(page, level + 1)}<nav class="noprint" aria-label="Parts of this guide"><ul>
${links.join('\n')}
</ul></nav>
${parts.join('')}</${element}>
`;
}

function headline({ category, labelsRead, counts }: GuidePage): string {
  const { read, fits, nearly, leftOut, marked } = counts;
  const when = labelsRead === undefined ? '' : `, labels read ${dayText(labelsRead.from)} to ${dayText(labelsRead.to)}`;
  const due = marked === 0 ? '' : ` ${marked} to check against the package.`;
  return `Guide to ${outside(category)}${when}. ${read} foods judged: ${fits} fit, ${nearly} nearly, ${leftOut} left out.${due}`;
}

function disclosuresHtml({ disclosures }: GuidePage): string {
  if (disclosures.length === 0) return '';
  return `<div class="told"><p><b>What the author gets:</b></p>${list(disclosures.map(({ text }) => text))}</div>\n`;
}

function ruleHtml({ rule }: GuidePage, level: number): string {
  const { yardstick, plate, setting, tests, allowance, example } = rule;
  return `<section class="rule">
<h${level} class="name">How these were chosen: ${htmlText(yardstick)}</h${level}>
<p>Judged as eaten. Portion: ${outside(plate)}.${setting === undefined ? '' : ` For: ${htmlText(setting)}.`}</p>
${list(tests)}${allowance === undefined ? '' : `<p><b>${htmlText(allowance)}</b></p>\n`}${example === undefined ? '<p>No food of this survey fits, so there is no example.</p>\n' : exampleHtml(example)}${barWords(rule)}</section>
`;
}

function exampleHtml({ name, rows, outcome }: WorkedExample): string {
  const body = rows
    .map(
      ({ what, energy, sodium }) =>
        `<tr><th scope="row">${outside(what)}</th><td>${htmlText(energy)}</td><td>${htmlText(sodium)}</td></tr>`,
    )
    .join('\n');
  return `<p>An example, ${outside(name)}:</p>
<table>
<thead><tr><th scope="col">What</th><th scope="col">Energy</th><th scope="col">Sodium</th></tr></thead>
<tbody>
${body}
</tbody>
</table>
<p>${outside(outcome)}</p>
`;
}

function barWords({ tests }: GuidePage['rule']): string {
  if (tests.length === 0) return '';
  return '<p class="small">In the bars the tall line is the most that the rule allows, the thick part is what the food comes to, the short lines show what rounding on the label allows. Dashed is estimated. Where a figure is not on the label it is unknown, not zero.</p>\n';
}

function settingsHtml({ settingsNotes }: GuidePage): string {
  if (settingsNotes.length === 0) return '';
  return `<dl class="text">\n${settingsNotes.map(({ title, text }) => `<dt>${htmlText(title)}</dt><dd>${outside(text)}</dd>`).join('\n')}\n</dl>\n`;
}

function takenOffHtml({ takenOff }: GuidePage): string {
  if (takenOff.length === 0) return '';
  return `<p class="text">These fitted when the guide was published. By their newest label they no longer do, or they have no label any more.</p>\n${list(takenOff)}`;
}

function leftOutHtml({ leftOut, counts }: GuidePage): string {
  if (leftOut.length === 0) return '';
  return `<p>${counts.leftOut} of ${counts.read} foods:</p>\n${list(leftOut.map(({ reason, count }) => `${count}: ${reason}.`))}`;
}

function correctionsHtml({ corrections }: GuidePage): string {
  if (corrections.length === 0) return '';
  return list(corrections.map(({ on, text }) => `${dayText(on)}: ${text}`));
}

function cutOutHtml(page: GuidePage): string {
  const { line } = page.rule;
  if (line === undefined) return '';
  const chart = slideChartSvg(page, line);
  return pocketCardSvg(page, line) + (chart === undefined ? '' : `<div class="cut">\n${chart}</div>\n`);
}

function paragraphs(text: string): string {
  return text
    .split(/\n\s*\n/)
    .filter(one => one.trim() !== '')
    .map(one => `<p class="text">${outside(one)}</p>\n`)
    .join('');
}

function list(items: readonly string[]): string {
  return items.length === 0 ? '' : `<ul class="text">\n${items.map(item => `<li>${outside(item)}</li>`).join('\n')}\n</ul>\n`;
}
