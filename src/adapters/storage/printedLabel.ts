import type { PrintedLabel } from '#core/label/label.ts';
import { longestPrintedText } from '#core/label/labelJson.ts';
import { isObject, readJson } from './readJson.ts';

const textKeys = ['id', 'name', 'maker', 'category', 'gtin', 'readOn', 'readAt', 'notSignificantSourceOf', 'statement'] as const;

/** The label of a row; undefined when it is damaged. */
export function readPrinted(text: string): PrintedLabel | undefined {
  return readJson(text, json => (isPrinted(json) ? json : undefined));
}

/**
 * Whether a label has what its readers rely on. A check by hand, since it runs for each label of the shelf: what goes in
 * was read by the label's codec, and this finds what was damaged since.
 */
export function isPrinted(json: unknown): json is PrintedLabel {
  return (
    isObject(json) &&
    isPanel(json.panel) &&
    isObject(json.serving) &&
    isText(json.market) &&
    isText(json.basis) &&
    isText(json.state) &&
    Array.isArray(json.front) &&
    json.front.every(isText) &&
    Array.isArray(json.otherColumns) &&
    json.otherColumns.every(column => isObject(column) && isPanel(column.panel)) &&
    textKeys.every(key => json[key] === undefined || isText(json[key]))
  );
}

function isPanel(json: unknown): boolean {
  if (!isObject(json)) return false;
  for (const key in json) if (typeof json[key] !== 'number' && typeof json[key] !== 'string') return false;
  return true;
}

function isText(json: unknown): json is string {
  return typeof json === 'string' && json.length <= longestPrintedText;
}
