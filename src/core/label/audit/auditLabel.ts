import type { AdditiveFinding } from '#core/additive/additive.ts';
import type { Reading } from '#core/errors.ts';
import type { ReadPanel } from '#core/label/panel/readPanel.ts';
import type { ReadServing } from '#core/label/serving/readServing.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Statement, StatementIssueCode } from '#core/statement/statement.ts';
import type { Finding, PrintedColumn, PrintedLabel } from '../label.ts';
import { auditColumns } from './auditColumns.ts';
import { auditDisagreements } from './auditDisagreements.ts';
import { auditEnergy } from './auditEnergy.ts';
import { auditGtin } from './auditGtin.ts';
import { auditParts } from './auditParts.ts';
import { auditPotassium } from './auditPotassium.ts';
import { auditPrint } from './auditPrint.ts';
import { auditServing } from './auditServing.ts';
import { type PanelView, printedRanges } from './panelView.ts';

export interface ReadColumn {
  readonly printed: PrintedColumn;
  readonly panel: ReadPanel;
  readonly serving: ReadServing | undefined;
}

/** A label in parts, as `readLabel` has them. */
export interface LabelParts {
  readonly printed: PrintedLabel;
  readonly panel: ReadPanel;
  readonly serving: ReadServing;
  readonly columns: readonly ReadColumn[];
  readonly notSignificant: readonly Nutrient[];
  readonly additives: readonly AdditiveFinding[];
  /** Absent when the label has no statement. */
  readonly statement: Reading<Statement, StatementIssueCode> | undefined;
}

/**
 * What is odd about a label as printed: figures that cannot be true together, that no law prints so, or that were
 * likely misread. A label that follows its law gives nothing; rounding is always given the benefit.
 */
export function auditLabel(parts: LabelParts): readonly Finding[] {
  const { printed, serving, additives, statement } = parts;
  const first: PanelView = {
    panel: parts.panel,
    ranges: printedRanges(parts.panel, printed.market, parts.notSignificant),
    market: printed.market,
    basis: printed.basis,
    state: printed.state,
    serving,
    notSignificant: parts.notSignificant,
    prefix: '',
  };
  const others = parts.columns.map((column, index) => columnView(first, column, index));
  const clues = { statement: printed.statement, description: `${printed.name ?? ''} ${printed.category ?? ''}` };
  const found: Finding[] = [];
  for (const view of [first, ...others]) {
    found.push(...auditEnergy(view, clues), ...auditParts(view), ...auditPrint(view), ...auditDisagreements(view));
  }
  found.push(...auditColumns(first, others), ...auditPotassium(first, additives), ...auditThreshold(statement));
  if (printed.market === 'us') found.push(...auditServing(serving));
  found.push(...auditGtin(printed.gtin));
  return found;
}

/** A column without a serving of its own is for the label's serving, as long as it shows the food in the same state. */
function columnView(first: PanelView, { printed, panel, serving }: ReadColumn, index: number): PanelView {
  return {
    panel,
    ranges: printedRanges(panel, first.market, []),
    market: first.market,
    basis: printed.basis,
    state: printed.state,
    serving: serving ?? (printed.state === first.state ? first.serving : undefined),
    notSignificant: [],
    prefix: `otherColumns[${index}].`,
  };
}

function auditThreshold(statement: Reading<Statement, StatementIssueCode> | undefined): readonly Finding[] {
  const found: Finding[] = [];
  for (const issue of statement?.issues ?? []) {
    if (issue.code !== 'threshold-not-allowed') continue;
    const message = `The statement says "${issue.found}"; allowed is ${issue.expected}.`;
    found.push({ code: 'threshold-not-allowed', about: 'statement', message, source: '21 CFR 101.4(a)(2)' });
  }
  return found;
}
