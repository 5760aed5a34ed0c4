import type { Issue } from '#core/errors.ts';
import { compareLabels, type LabelComparison } from '#core/label/compareLabels.ts';
import type { PrintedLabel, PrintedServing, ReadLabel } from '#core/label/label.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { per100G } from '#core/label/serving/per100G.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { additiveInShort } from './additiveInShort.ts';
import type { Shelf, ShelfFood } from './shelf.ts';
import { shownAmounts } from './shownAmounts.ts';
import type { FoodRow, LabelRow } from './store.ts';

/** A food in a list: what its standing label says in short. */
export function describeShort({ row, label, food }: ShelfFood, labels = 1) {
  const { energyKcal, sodiumMg } = food.label.amounts;
  const serving = servingText(food.label.printed.serving);
  return {
    ...describeRow(row),
    labels,
    ...(label.printed.readOn === undefined ? {} : { readOn: label.printed.readOn }),
    ...(label.printed.readAt === undefined ? {} : { readAt: label.printed.readAt }),
    ...(label.recheckOn === undefined ? {} : { recheckOn: label.recheckOn }),
    ...(serving === undefined ? {} : { servingText: serving }),
    energyKcal: energyKcal.kind === 'known' ? (energyKcal.printed ?? null) : null,
    sodiumMg: sodiumMg.kind === 'known' ? (sodiumMg.printed ?? null) : null,
    additives: food.label.additives.map(additiveInShort),
    statementRead: food.label.statement !== undefined,
    findings: food.label.findings.length,
  };
}

/** A food none of whose labels stands any more. */
export function describeRow(row: FoodRow) {
  return {
    id: row.id,
    name: row.name,
    ...(row.maker === undefined ? {} : { maker: row.maker }),
    ...(row.category === undefined ? {} : { category: row.category }),
    ...(row.gtin === undefined ? {} : { gtin: row.gtin }),
    isDemo: row.isDemo,
    version: row.version,
  };
}

/** A label read, as the food screen shows it. */
export function describeReading(label: ReadLabel, moreIssues: readonly Issue[] = []) {
  const serving = servingText(label.printed.serving);
  return {
    ...(serving === undefined ? {} : { servingText: serving }),
    amounts: shownAmounts(label.amounts, label.asPrinted),
    per100G: shownAmounts(per100G(label)),
    additives: label.additives,
    statementRead: label.statement !== undefined,
    findings: label.findings,
    issues: [...moreIssues, ...label.issues],
  };
}

/** A draft from the form: read, and nothing kept. */
export function describeDraft(json: unknown): {
  readonly printed?: PrintedLabel;
  readonly reading?: ReturnType<typeof describeReading>;
  readonly issues: readonly Issue[];
} {
  const { value, issues } = labelFromJson(json);
  if (value === undefined) return { issues };
  return { printed: value, reading: describeReading(readLabel(value), issues), issues };
}

/** All labels of a food, newest first, each with what changed since the reading before it. */
export function describeHistory(labels: readonly LabelRow[], standingId: string | undefined, shelf: Shelf) {
  return labels.map((label, index) => {
    const reading = shelf.reading(label);
    // A correction stands in the place of the label that it mends: what came before a newer reading is whatever stood then.
    const earlier = labels.slice(index + 1).find(({ withdrawn, correctedBy }) => !withdrawn && !correctedBy);
    return {
      id: label.id,
      kind: label.kind,
      ...(label.correctsLabelId === undefined ? {} : { correctsLabelId: label.correctsLabelId }),
      ...(label.correctedBy === undefined ? {} : { correctedBy: label.correctedBy }),
      ...(label.reason === undefined ? {} : { reason: label.reason }),
      ...(label.withdrawn === undefined ? {} : { withdrawn: label.withdrawn }),
      addedAt: label.addedAt,
      ...(label.recheckOn === undefined ? {} : { recheckOn: label.recheckOn }),
      photoIds: [...label.photoIds],
      printed: { ...label.printed },
      read: describeReading(reading),
      ...(earlier === undefined || label.kind === 'correction'
        ? {}
        : { changes: describeChanges(compareLabels(shelf.reading(earlier), reading)) }),
      stands: label.id === standingId,
    };
  });
}

function describeChanges(comparison: LabelComparison) {
  const sentences = comparison.figures.map(({ nutrient, kind, earlier, later }) => {
    const { name, unit } = nutrients[nutrient];
    const figure = (amount: typeof earlier): string =>
      amount.kind === 'known' ? `${amount.printed ?? `${amount.range.lo} – ${amount.range.hi}`} ${unit}` : 'unknown';
    if (kind === 'appeared') return `${upper(name)} is printed now: ${figure(later)}.`;
    if (kind === 'disappeared') return `${upper(name)} is no longer printed.`;
    return `${upper(name)}: ${figure(earlier)} before, ${figure(later)} now${comparison.comparedPer === 'the-same-quantity' ? '' : ` (${comparison.comparedPer.replace('100-', 'per 100 ')})`}.`;
  });
  if (comparison.servingChanged) sentences.push('The serving is another one.');
  if (comparison.statement === 'changed') sentences.push('The ingredients changed.');
  if (comparison.statement === 'reworded') sentences.push('The ingredients are worded differently.');
  for (const { name, class: kind } of comparison.additivesCame) sentences.push(`Came: ${name} (${kind}).`);
  for (const { name, class: kind } of comparison.additivesWent) sentences.push(`Went: ${name} (${kind}).`);
  return { outcome: comparison.outcome, sentences };
}

/** "4 slices (56 g)" */
export function servingText({ household, grams, milliliters }: PrintedServing): string | undefined {
  const mass = grams !== undefined ? withUnit(grams, 'g') : milliliters !== undefined ? withUnit(milliliters, 'mL') : undefined;
  if (household === undefined) return mass;
  return mass === undefined || household.includes('(') ? household : `${household} (${mass})`;
}

function withUnit(figure: number | string, unit: string): string {
  return /[a-z]/i.test(String(figure)) ? String(figure) : `${figure} ${unit}`;
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
