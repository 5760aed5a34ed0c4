/** Which column of a table is which field of a label: the headings of docs/formats.md, and the names that packages and sheets use. */
import { type LabelField, labelFieldKeys, labelFields } from '#core/label/labelFields.ts';
import { type PanelKey, panelKeys, panelLine } from '#core/label/panelKeys.ts';

/** A column that a label has a place for. */
export type LabelHeading = { readonly kind: 'field'; readonly key: LabelField } | { readonly kind: 'panel'; readonly key: PanelKey };

/** Case, blanks, underscores, hyphens and brackets do not count. µg is mcg. "Sodium (mg)" is "sodiummg". */
function bare(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[µμ]g/g, 'mcg')
    .replace(/[\s_\-‐‑–—()[\]{}]/g, '');
}

function panelNames(): [string, LabelHeading][] {
  return panelKeys.flatMap(key =>
    [key, ...panelLine(key).headings].map((name): [string, LabelHeading] => [bare(name), { kind: 'panel', key }]),
  );
}

function fieldNames(): [string, LabelHeading][] {
  return labelFieldKeys.flatMap(key =>
    [key, ...labelFields[key].alsoCalled].map((name): [string, LabelHeading] => [bare(name), { kind: 'field', key }]),
  );
}

const byBareName: ReadonlyMap<string, LabelHeading> = new Map([...panelNames(), ...fieldNames()]);

/** The field that a heading stands for; undefined for one that a label has no place for. `Sodium (mg)` is `sodiumMg`, `Sodium (g)` is nothing. */
export function labelHeading(heading: string): LabelHeading | undefined {
  return byBareName.get(bare(heading));
}
