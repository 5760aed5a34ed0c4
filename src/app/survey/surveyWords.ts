/** Words and figures that the table and the CSV of a survey share. */
import { type AdditiveFinding, additiveClasses, type Certainty } from '#core/additive/additive.ts';
import type { ReadLabel } from '#core/label/label.ts';
import type { Total } from '#core/quantity/amount.ts';
import { ceilTo, floorTo } from '#core/quantity/rounding.ts';

/** A total without its unit: "250", "95–140", "95 or more"; undefined when a part of it is not known. */
export function totalText({ judged, missing }: Total): string | undefined {
  if (missing.length > 0) return undefined;
  if (judged.lo === judged.hi) return String(Math.round(judged.lo));
  if (judged.hi === Number.POSITIVE_INFINITY) return `${floorTo(judged.lo, 0)} or more`;
  return `${floorTo(judged.lo, 0)}–${ceilTo(judged.hi, 0)}`;
}

const certaintyText: Readonly<Record<Certainty, string>> = {
  named: '',
  alternative: ' (one of several)',
  'may-contain': ' (may be in it)',
  possible: ' (possible)',
  misspelled: ' (misspelled)',
};

/**
 * The additives that count, by class: "phosphate: sodium phosphates; sodium: salt, sodium nitrite (may be in it)". A label
 * without a statement is unknown, not free of them.
 */
export function additivesText(label: ReadLabel): string {
  if (label.statement === undefined) return 'unknown: no statement was read';
  const named = additiveClasses.flatMap(one => {
    const ofClass = label.additives.filter(finding => finding.counts && finding.class === one).map(additiveText);
    return ofClass.length === 0 ? [] : [`${one}: ${[...new Set(ofClass)].join(', ')}`];
  });
  return named.length === 0 ? 'none named on the label' : named.join('; ');
}

function additiveText({ name, certainty }: AdditiveFinding): string {
  return name + certaintyText[certainty];
}
