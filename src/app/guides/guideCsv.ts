import { dayText } from '#core/guide/day.ts';
import type { GuidePage, GuidePlace, Variety } from '#core/guide/guidePage.ts';
import { cleanText } from '#core/guide/html/escape.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { csvRow } from '../csvRow.ts';

const figureColumns: readonly Nutrient[] = ['energyKcal', 'sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG'];

const headings = [
  ...['section', 'foodId', 'name', 'maker', 'verdict', 'closeCall', 'estimated', 'portion'],
  ...figureColumns,
  ...['plateEnergyKcal', 'plateSodiumMg', 'toSpare', 'additives', 'waysIn', 'readOn', 'readAt', 'marks', 'portionNote', 'whereToBuy'],
];

/** The foods of a guide as a table, in the order of the page; figures are those of the portion. docs/formats.md lists the headings. */
export function guideCsv({ sections, nearly }: GuidePage): string {
  const all = [...sections, { title: 'Nearly', entries: nearly }];
  const rows = all.flatMap(({ title, entries }) => entries.flatMap(({ varieties }) => varieties.map(one => row(title, one))));
  return csvRow(headings) + rows.join('');
}

function row(section: string, variety: Variety): string {
  const { perPortion, onPlate } = variety;
  return csvRow(
    [
      section,
      variety.foodId,
      variety.name,
      variety.maker ?? '',
      variety.verdict,
      variety.closeCall ? 'yes' : 'no',
      variety.estimated ? 'yes' : 'no',
      variety.portion,
      ...figureColumns.map(nutrient => perPortion.find(figure => figure.nutrient === nutrient)?.cell ?? ''),
      ...onPlate.map(({ cell }) => cell),
      variety.margins.join(' | '),
      variety.additives.join(' '),
      variety.waysIn.join(' | '),
      variety.readOn ?? '',
      variety.readAt ?? '',
      variety.marks.join(' | '),
      variety.portionNote ?? '',
      variety.places.map(placeText).join(' | '),
    ].map(cleanText),
  );
}

function placeText({ shop, aisle, url, price, priceOn, paysAuthor }: GuidePlace): string {
  const priced = price === undefined ? [] : [priceOn === undefined ? price : `${price} on ${dayText(priceOn)}`];
  const link = url === undefined ? [] : [paysAuthor ? `${url} (paid link)` : url];
  return [shop, ...(aisle === undefined ? [] : [aisle]), ...priced, ...link].join(', ');
}
