import { readFileSync } from 'node:fs';
import { findBrowser } from '#adapters/files/findBrowser.ts';
import { pdfPrinter } from '#adapters/files/printPdf.ts';
import { buildGuideSite } from '#app/guides/buildGuideSite.ts';
import { surveyForGuide } from '#app/guides/surveyForGuide.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { figure } from './measure.ts';
import { grownShelf } from './survey.ts';

const demo = new URL('../data/demo/', import.meta.url);
const json = (path: string): unknown => JSON.parse(readFileSync(new URL(path, demo), 'utf8'));

/** Guides with all foods on the page: from judging to every file of the site, at three sizes; how large the page gets; its PDF. */
export async function benchGuide(): Promise<void> {
  const demoDraft = guideFromJson(json('guides/sandwich-slices.json')).value!;
  const plate = plateFromJson(json('plates/slices-on-low-sodium-bread.json')).value as Plate;
  const yardstick = builtInYardsticks.find(({ id }) => id === demoDraft.survey.yardstickId)!;
  const { category } = demoDraft.survey;
  const fitting = grownShelf(12_000)
    .filter(({ label: { printed, amounts } }) => printed.category === category && fits(amounts.sodiumMg, amounts.energyKcal))
    .map(({ label }, row) => {
      const { gtin: _, ...printed } = label.printed;
      return { row, label: { ...label, printed } };
    });
  const place = {
    shop: 'Tollen Foods',
    aisle: 'Meat case',
    url: 'https://tollen-foods.example/slices',
    price: '$4.99',
    priceOn: '2026-10-20',
  };
  const pageOf = async (count: number): Promise<{ readonly seconds: number; readonly foods: number; readonly html: string }> => {
    const labels = fitting.slice(0, count);
    const draft = { ...demoDraft, leftOut: [], whereToBuy: Object.fromEntries(labels.map(({ label }) => [label.printed.id!, [place]])) };
    let html = '';
    let fastest = Number.POSITIVE_INFINITY;
    for (let run = 0; run < 5; run++) {
      const start = performance.now();
      const { value: site } = await buildGuideSite({ guides: [surveyForGuide({ draft, labels, plate, yardstick, today: '2026-11-15' })] });
      fastest = Math.min(fastest, performance.now() - start);
      html = site.get(`guides/${draft.id}.html`) as string;
    }
    return { seconds: fastest / 1000, foods: labels.length, html };
  };
  const { seconds, foods, html } = await pageOf(300);
  figure(`guide of ${foods} foods, each with a link: survey and all files, seconds`, seconds, 'under 2');
  figure('  the page, kB', Buffer.byteLength(html) / 1000, 'under 300');
  for (const more of [1_000, 3_000]) {
    const grown = await pageOf(more);
    figure(`  the same of ${grown.foods.toLocaleString('en-US')} foods, seconds`, grown.seconds, 'growth');
  }
  if (findBrowser() === undefined) return;
  const start = performance.now();
  await pdfPrinter()(html);
  figure(`  PDF of the ${foods} foods, browser started anew, seconds`, (performance.now() - start) / 1000, 'under 15');
}

type Known = { readonly kind: string; readonly printed?: number };

/** The demo's bread leaves a portion as many mg as it has kcal, and 140 mg more. */
function fits(sodiumMg: Known, energyKcal: Known): boolean {
  return sodiumMg.printed !== undefined && energyKcal.printed !== undefined && sodiumMg.printed <= energyKcal.printed + 140;
}
