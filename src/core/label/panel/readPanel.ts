import { agreement, onlyCurrentAgrees } from '#core/label/figure/dailyValue.ts';
import { type Figure, isNutrientKey } from '#core/label/figure/figure.ts';
import { ownAmount, type PanelBase, printedRange } from '#core/label/figure/printedRange.ts';
import { readFigure } from '#core/label/figure/readFigure.ts';
import { type Amount, unknown } from '#core/quantity/amount.ts';
import type { Market, PrintedPanel } from '../label.ts';
import { type LabelIssue, labelIssue } from '../labelIssue.ts';
import { isPanelKey, type PanelKey } from '../panelKeys.ts';

/** One line of a panel after reading. */
export interface PanelLine {
  readonly key: PanelKey;
  readonly words: string;
  /** Absent when the figure could not be read. */
  readonly figure?: Figure;
  /** In the key's own unit, as printed: salt in g, energy in kJ, EU carbohydrate without fiber. */
  readonly amount: Amount;
}

export interface ReadPanel {
  /** Only the lines that are there. */
  readonly lines: readonly PanelLine[];
  readonly base: PanelBase;
  readonly issues: readonly LabelIssue[];
}

/** Reads every figure of a panel and the range it stands for. `where` goes before the key in the place of an issue. */
export function readPanel(panel: PrintedPanel, market: Market, where = 'panel'): ReadPanel {
  const issues: LabelIssue[] = [];
  const read: { key: PanelKey; words: string; figure?: Figure; amount: Amount }[] = [];
  let rereadPercents = false;
  for (const key of Object.keys(panel)) {
    const printed = panel[key as PanelKey];
    if (printed === undefined) continue;
    const place = `${where}.${key}`;
    if (!isPanelKey(key)) {
      issues.push(labelIssue('key-not-known', place, key, 'a nutrient name from docs/formats.md; this one is left alone'));
      continue;
    }
    const reading = readFigure(key, printed, market, place);
    for (const issue of reading.issues) issues.push(issue);
    const words = typeof printed === 'number' ? String(printed) : printed;
    if (reading.value.kind === 'no-figure') {
      read.push({ key, words, amount: unknown(reading.value.reason) });
      continue;
    }
    if (reading.value.percent !== undefined) rereadPercents = true;
    read.push({ key, words, figure: reading.value, amount: printedRange(key, reading.value, market) });
  }
  if (!rereadPercents) return { lines: read, base: 'current', issues };

  const base = panelBase(read, market);
  for (const line of read) {
    if (line.figure === undefined) continue;
    if (base !== 'current') line.amount = printedRange(line.key, line.figure, market, base);
    const alone = line.figure.percent !== undefined && line.figure.value === undefined;
    if (alone && line.amount.kind === 'unknown' && line.amount.reason === 'not-printed')
      issues.push(
        labelIssue('percent-without-amount', `${where}.${line.key}`, line.words, 'an amount: this panel has no Daily Value for it'),
      );
  }
  return { lines: read, base, issues };
}

/** Lines with an amount and a percent tell which Daily Values a panel is on; where none tells, today's are taken. */
function panelBase(lines: readonly PanelLine[], market: Market): PanelBase {
  let before = false;
  let current = false;
  for (const { key, figure } of lines) {
    if (!isNutrientKey(key) || !hasBoth(figure)) continue;
    const range = ownAmount(key, figure, market, 'current')?.range;
    if (range === undefined) continue;
    if (agreement(key, range, figure.percent, market) === 'agrees-before-2016') before = true;
    else if (onlyCurrentAgrees(key, range, figure.percent, market)) current = true;
  }
  return before ? (current ? 'unclear' : 'before-2016') : 'current';
}

/** An amount with its %DV: the lines that can be checked against a Daily Value. */
export function hasBoth(figure: Figure | undefined): figure is Figure & { value: number; percent: number } {
  return figure?.value !== undefined && figure.percent !== undefined && !figure.percentLessThan;
}

export function lineOf(panel: ReadPanel, key: PanelKey): PanelLine | undefined {
  for (const line of panel.lines) if (line.key === key) return line;
  return undefined;
}
