import type { Issue } from '#core/errors.ts';

/** What can be noticed while a label is read. Codes are permanent. */
export type LabelIssueCode =
  | 'figure-empty'
  | 'figure-not-readable'
  | 'figure-letter-for-digit'
  | 'figure-negative'
  | 'figure-out-of-bounds'
  | 'figure-ambiguous'
  | 'decimal-comma'
  | 'unit-converted'
  | 'unit-not-fitting'
  | 'percent-without-amount'
  | 'percent-without-daily-value'
  | 'nutrient-not-known'
  | 'serving-not-readable'
  | 'serving-disagrees'
  | 'json-format-not-known'
  | 'label-not-an-object'
  | 'panel-missing'
  | 'key-not-known'
  | 'value-of-wrong-type'
  | 'value-not-allowed';

export type LabelIssue = Issue<LabelIssueCode>;

/** `where` is the key that was read, such as "panel.sodiumMg". Found text is cut and cleaned, so that it can be shown anywhere. */
export function labelIssue(code: LabelIssueCode, where: string, found: unknown, expected: string): LabelIssue {
  return { code, place: { heading: where }, found: shown(found), expected };
}

const longestShown = 60;

function shown(found: unknown): string {
  if (typeof found === 'number') return String(found);
  if (typeof found !== 'string') return found === null ? 'null' : Array.isArray(found) ? 'a list' : `a ${typeof found}`;
  let text = '';
  let count = 0;
  for (const character of found.slice(0, longestShown * 2)) {
    if (count++ === longestShown) break;
    text += character < ' ' || character === '\u007f' ? '\ufffd' : character;
  }
  return text.length < found.length ? `${text}…` : text;
}
