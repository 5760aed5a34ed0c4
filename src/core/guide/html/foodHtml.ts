import { dayText } from '../day.ts';
import type { Figure, GuideEntry, GuidePlace, Variety } from '../guidePage.ts';
import { barSvg } from './barSvg.ts';
import { htmlAttribute, htmlText, safeUrl } from './escape.ts';

/** A name from outside, set apart so that letters written from right to left turn nothing else around. */
export function outside(text: string): string {
  return `<bdi>${htmlText(text)}</bdi>`;
}

/** `level` is the level of the entry's heading; varieties stand one below. */
export function entryHtml({ title, maker, varieties }: GuideEntry, level: number): string {
  const [only] = varieties;
  const head = `<h${level} class="name">${outside(title)}</h${level}>${maker === undefined ? '' : `<p class="soft">${outside(maker)}</p>`}`;
  const several = varieties.length > 1;
  const count = several ? `<p class="soft">${varieties.length} foods of this maker</p>` : '';
  const body = several
    ? varieties.map(one => `<div><h${level + 1} class="kind">${outside(one.name)}</h${level + 1}>${varietyHtml(one)}</div>`).join('')
    : varietyHtml(only!);
  return `<article class="food${several ? ' several' : ''}">${head}${count}${body}</article>\n`;
}

function varietyHtml(variety: Variety): string {
  const { portion, perPortion, onPlate, additives, waysIn, marks, portionNote, photo, places, disclosed, bar } = variety;
  return [
    photo === undefined ? '' : `<img class="photo" src="${htmlAttribute(photo.dataUrl)}" alt="${htmlAttribute(photo.alt)}">`,
    verdictLine(variety),
    bar === undefined ? '' : barSvg(bar),
    `<p><b>${htmlText(portion)}:</b> ${figures(perPortion)}</p>`,
    `<p><b>On the plate:</b> ${figures(onPlate)}</p>`,
    `<p>${additives.map(htmlText).join(' ')}</p>`,
    portionNote === undefined ? '' : `<p><b>Measure it:</b> ${outside(portionNote)}</p>`,
    waysIn.length === 0 ? '' : `<p><b>What would make it fit:</b></p><ul>${waysIn.map(way => `<li>${outside(way)}</li>`).join('')}</ul>`,
    disclosed.map(words => `<p class="v">${htmlText(words)}.</p>`).join(''),
    places.length === 0 ? '' : `<ul>${places.map(placeHtml).join('')}</ul>`,
    readLine(variety),
    marks.map(mark => `<p class="mark">Check: ${htmlText(mark)}</p>`).join(''),
  ].join('');
}

function verdictLine({ verdict, closeCall, estimated, margins }: Variety): string {
  const kind = verdict === 'fits' ? 'fits' : 'nearly';
  const flags = [
    ...margins,
    ...(closeCall ? ['close call: rounding on the label could tip it'] : []),
    ...(estimated ? ['rests on an estimate, not on the label alone'] : []),
  ];
  const word = verdict === 'fits' ? 'Fits' : 'Nearly';
  return `<p class="v ${kind}">${word}${flags.map(flag => `; ${htmlText(flag)}`).join('')}</p>`;
}

function figures(all: readonly Figure[]): string {
  return all.map(({ text }) => htmlText(text)).join(' · ');
}

function placeHtml({ shop, aisle, url, price, priceOn, paysAuthor }: GuidePlace): string {
  const safe = url === undefined ? undefined : safeUrl(url);
  const name =
    safe === undefined ? outside(shop) : `<a href="${htmlAttribute(safe)}"${paysAuthor ? ' rel="sponsored"' : ''}>${outside(shop)}</a>`;
  const priced = price === undefined ? '' : `, ${outside(price)}${priceOn === undefined ? '' : ` on ${htmlText(dayText(priceOn))}`}`;
  return `<li>${name}${safe !== undefined && paysAuthor ? ' <b>(paid link)</b>' : ''}${aisle === undefined ? '' : `, ${outside(aisle)}`}${priced}</li>`;
}

function readLine({ readOn, readAt }: Variety): string {
  if (readOn === undefined) return '';
  return `<p class="soft small">Label read ${htmlText(dayText(readOn))}${readAt === undefined ? '' : ` at ${outside(readAt)}`}</p>`;
}
