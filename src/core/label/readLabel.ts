import { findAdditives } from '#core/additive/findAdditives.ts';
import type { Issue } from '#core/errors.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { auditLabel } from './audit/auditLabel.ts';
import { readNotSignificant } from './figure/notSignificant.ts';
import type { AmountsFor, PrintedLabel, ReadLabel } from './label.ts';
import { panelAmounts } from './panel/panelAmounts.ts';
import { readPanel } from './panel/readPanel.ts';
import { type ReadServing, readServing } from './serving/readServing.ts';

/**
 * Reads a label: every figure with its range, the statement as a tree, the additives in it and what the audit noticed.
 * Pure, never throws on what a package or a table may hold; what cannot be read is unknown and has an issue.
 */
export function readLabel(printed: PrintedLabel): ReadLabel {
  const { market, basis } = printed;
  const serving = readServing(printed.serving, market);
  const panel = readPanel(printed.panel, market);
  const notSignificant = readNotSignificant(printed.notSignificantSourceOf ?? '');
  const columns = printed.otherColumns.map((column, index) => ({
    printed: column,
    panel: readPanel(column.panel, market, `otherColumns[${index}].panel`),
    serving: column.serving === undefined ? undefined : readServing(column.serving, market, `otherColumns[${index}].serving`),
  }));
  const statement = printed.statement === undefined ? undefined : parseStatement(printed.statement);
  const additives = statement === undefined ? [] : findAdditives(statement.value);
  const { amounts, asPrinted } = panelAmounts(panel, market, notSignificant.value);

  const issues: readonly Issue[] = [
    ...serving.issues,
    ...panel.issues,
    ...notSignificant.issues,
    ...columns.flatMap(column => [...column.panel.issues, ...(column.serving?.issues ?? [])]),
    ...(statement?.issues ?? []),
  ];
  return {
    printed,
    amounts,
    amountsFor: amountsFor(basis, serving),
    ...(serving.grams === undefined ? {} : { servingGrams: serving.grams.range }),
    ...(serving.milliliters === undefined ? {} : { servingMilliliters: serving.milliliters.range }),
    asPrinted,
    ...(statement === undefined ? {} : { statement: statement.value }),
    additives,
    findings: auditLabel({ printed, panel, serving, columns, notSignificant: notSignificant.value, additives, statement }),
    issues,
  };
}

/** A panel per serving is for one serving; one per 100 g or mL is for as many servings as that makes. */
function amountsFor(basis: PrintedLabel['basis'], { grams, milliliters, household }: ReadServing): AmountsFor {
  const own = {
    servings: 1,
    ...(grams === undefined ? {} : { grams: grams.printed }),
    ...(milliliters === undefined ? {} : { milliliters: milliliters.printed }),
    ...(household === undefined ? {} : { household }),
  };
  if (basis === 'per-serving') return own;
  const quantity = basis === 'per-100-g' ? own.grams : own.milliliters;
  const hundred = basis === 'per-100-g' ? { grams: 100 } : { milliliters: 100 };
  if (quantity === undefined) return hundred;
  const factor = 100 / quantity;
  return {
    servings: factor,
    ...(own.grams === undefined ? {} : { grams: cleanFloat(own.grams * factor) }),
    ...(own.milliliters === undefined ? {} : { milliliters: cleanFloat(own.milliliters * factor) }),
    ...hundred,
    ...(household === undefined ? {} : { household: { ...household, count: household.count * factor } }),
  };
}
