import { usDeclaredDailyValuePercent, usDeclaredFigure } from '#core/label/figure/declaredFigure.ts';
import type { PrintedFigure } from '#core/label/label.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import type { Composition } from './composition.ts';
import type { PrintStyle } from './maker.ts';
import { type PanelLine, panelLines } from './panelLines.ts';

export interface Panel {
  readonly figures: Readonly<Partial<Record<PanelLine, PrintedFigure>>>;
  /** The words after "Not a significant source of"; undefined when no line went there. */
  readonly notSignificantSourceOf?: string;
}

/**
 * What US law prints for so many grams of the food (21 CFR 101.9(c)). A line whose amount is not known is left off.
 * `leavesOutZeros` makes the short panel with its closing sentence.
 */
export function printedPanel(
  per100G: Composition,
  servingG: number,
  style: Pick<PrintStyle, 'percents' | 'lessThan' | 'lines'>,
  leavesOutZeros = false,
): Panel {
  const figures: Partial<Record<PanelLine, PrintedFigure>> = {};
  const leftOut: PanelLine[] = [];
  for (const line of style.lines ?? panelLines) {
    const known = per100G[line];
    if (known === undefined) continue;
    const amount = (known * servingG) / 100;
    if (leavesOutZeros && mayLeaveOut(line, amount, (per100G.fatG * servingG) / 100)) leftOut.push(line);
    else figures[line] = cell(line, amount, style);
  }
  return leftOut.length === 0 ? { figures } : { figures, notSignificantSourceOf: inWords(leftOut) };
}

function cell(line: PanelLine, amount: number, { percents, lessThan }: Pick<PrintStyle, 'percents' | 'lessThan'>): PrintedFigure {
  const figure = usDeclaredFigure(line, amount);
  if (typeof figure === 'string') return figure.replace('less than ', lessThan);
  if (percents === 'none' || !minerals.has(line)) return figure;
  return `${figure} ${nutrients[line].unit} ${usDeclaredDailyValuePercent(line, amount)}%`;
}

const minerals: ReadonlySet<PanelLine> = new Set(['vitaminDMcg', 'calciumMg', 'ironMg', 'potassiumMg']);

/**
 * Which lines may go into the closing sentence: saturated and trans fat when total fat is under 0.5 g, cholesterol under 2 mg,
 * fiber and sugars under 1 g, vitamins and minerals under 2 % of the Daily Value (21 CFR 101.9(c)(2) to (c)(8)).
 */
function mayLeaveOut(line: PanelLine, amount: number, totalFatG: number): boolean {
  switch (line) {
    case 'saturatedFatG':
    case 'transFatG':
      return totalFatG < 0.5;
    case 'cholesterolMg':
      return amount < 2;
    case 'fiberG':
    case 'totalSugarsG':
    case 'addedSugarsG':
      return amount < 1;
    default:
      return minerals.has(line) && usDeclaredDailyValuePercent(line, amount) === 0;
  }
}

function inWords(lines: readonly PanelLine[]): string {
  const names = lines.map(line => nutrients[line].printedName.toLowerCase().replace('vitamin d', 'vitamin D'));
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
