import type { PlaneRule } from '#core/yardstick/planeRule.ts';
import type { GuidePage } from '../guidePage.ts';
import { lineWords } from '../guideRule.ts';
import { htmlAttribute, htmlText } from './escape.ts';
import { wrapText } from './wrapText.ts';

/**
 * The most sodium, in whole mg and rounded down, that a portion of so many kcal may hold; 80 kcal with 140 mg more: 220.
 *
 * @internal
 */
export function mostSodiumMg({ slope, offset }: PlaneRule, energyKcal: number): number | undefined {
  const most = Math.floor(slope * energyKcal + offset + 1e-9);
  return most < 0 ? undefined : most;
}

/** A card for the purse, 85.6 mm by 54 mm (ISO/IEC 7810, ID-1), with the rule, a few worked figures and the plate they hold for. */
export function pocketCardSvg(page: GuidePage, line: PlaneRule): string {
  const rows = [50, 80, 100, 120, 150, 200].map((kcal, at) => {
    const x = 6 + at * 12.6;
    return `${text(x, 35.4, 3.4, `${kcal}`)}${text(x, 41.3, 3.8, sodiumCell(line, kcal), 700)}`;
  });
  const words = [
    ...wrapText(`A portion may hold ${lineWords(line)}.`, 32, 3).map((one, at) => text(6, 12.4 + at * 3.9, 3.4, one, 700)),
    ...wrapText(`Portion: ${page.rule.plate}`, 46, 2).map((one, at) => text(6, 23.6 + at * 3, 2.6, one)),
  ];
  const body = [
    '<rect x=".4" y=".4" width="84.8" height="53.2" rx="3" fill="#fff" stroke="#000" stroke-width=".4"/>',
    ...wrapText(page.rule.yardstick, 30, 1).map(one => text(6, 8, 4.4, one, 700)),
    ...words,
    '<path d="M6 27.8H79.6M6 36.9H79.6" stroke="#000" stroke-width=".3"/>',
    text(6, 31.2, 2.8, 'Calories of your portion; below, the most sodium (mg):'),
    ...rows,
    text(6, 46, 2.8, `${wrapText(page.author.name, 32, 1).join('')}, ${page.publishedOn}`),
    text(6, 50, 2.8, 'General information. Ask your kidney team.'),
  ];
  return sheet('85.6mm', '54mm', '0 0 85.6 54', `Pocket card: a portion may hold ${lineWords(line)}. Portion: ${page.rule.plate}.`, body);
}

const rowMm = 8;
const chartKcal = Array.from({ length: 28 }, (_, at) => (at + 1) * 10);

/**
 * A paper slide-chart on one sheet that fits A4 and Letter: a strip with the most sodium for each energy slides behind a window.
 * Undefined where the most sodium does not hang on the energy, for then one number says it all.
 */
export function slideChartSvg(page: GuidePage, line: PlaneRule): string | undefined {
  if (line.slope === 0) return undefined;
  const strip = chartKcal.map((kcal, at) => {
    const y = 12 + at * rowMm;
    return `<path d="M112 ${y}H176" stroke="#000" stroke-width=".2"/>${text(118, y + 5.8, 5, `${kcal} kcal`)}${text(146, y + 5.8, 5, `${sodiumCell(line, kcal)} mg`, 700)}`;
  });
  const sleeve = [
    rect(10, 4, 88, 130, ''),
    ...wrapText(page.rule.yardstick, 28, 2).map((one, at) => text(16, 14 + at * 6.4, 5.6, one, 700)),
    dashed(20, 32, 68),
    text(24, 46, 3.6, 'On the label'),
    text(54, 46, 3.6, 'Most sodium'),
    rect(21, 49, 66, rowMm + 1, '1.5 1'),
    text(24, 64, 3.2, 'Cut this window out.'),
    ...wrapText(`A portion may hold ${lineWords(line)}.`, 36, 3).map((one, at) => text(16, 73 + at * 5, 3.8, one, 700)),
    ...wrapText(`Portion: ${page.rule.plate}`, 44, 2).map((one, at) => text(16, 90 + at * 4.6, 3.4, one)),
    dashed(20, 104, 68),
    ...wrapText('Count the calories of the portion you eat. General information; ask your kidney team.', 44, 3).map((one, at) =>
      text(16, 114 + at * 4.6, 3.4, one),
    ),
  ];
  const how = [
    '1. Cut out the sleeve and the strip.',
    '2. Cut the window, and the two dashed lines as slits.',
    '3. Put the strip through the slits from behind,',
    'so that it shows in the window.',
    '4. Slide to the calories of your portion and read',
    'the most sodium beside them.',
  ].map((one, at) => text(10, 148 + at * 6, 4, one));
  const body = [...sleeve, ...how, rect(112, 4, 64, 16 + chartKcal.length * rowMm, ''), text(118, 10, 3.6, 'Strip'), ...strip];
  const label = `Paper slide-chart to cut out: for each energy from 10 to 280 kcal the most sodium of a portion, ${lineWords(line)}.`;
  return sheet('190mm', '250mm', '0 0 190 250', label, body);
}

function sodiumCell(line: PlaneRule, kcal: number): string {
  return mostSodiumMg(line, kcal)?.toString() ?? 'none';
}

function text(x: number, y: number, size: number, words: string, weight = 400): string {
  return `<text x="${round(x)}" y="${round(y)}" font-size="${size}" font-weight="${weight}">${htmlText(words)}</text>`;
}

function rect(x: number, y: number, width: number, height: number, dash: string): string {
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="none" stroke="#000" stroke-width=".4"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`;
}

function dashed(x: number, y: number, width: number): string {
  return `<path d="M${x} ${y}h${width}" stroke="#000" stroke-width=".5" stroke-dasharray="2 1.5"/>`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

function sheet(width: string, height: string, viewBox: string, label: string, body: readonly string[]): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" class="sheet" role="img" aria-label="${htmlAttribute(label)}" width="${width}" height="${height}" viewBox="${viewBox}" font-family="Atkinson Hyperlegible, Verdana, sans-serif" fill="#000">${body.join('')}</svg>\n`;
}
