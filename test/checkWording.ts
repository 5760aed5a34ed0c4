import { expect } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { printStatement } from '#core/statement/printStatement.fixture.ts';
import { outline } from './outline.ts';

/** What the tree of a statement looks like and which remarks stand beside it. Printing keeps both. */
export function check(text: string, tree: string, ...remarks: string[]): void {
  const { value } = parseStatement(text);
  const told = value.remarks.map(remark => `${remark.kind}: ${remark.text}`);
  expect(outline(value)).toBe(tree);
  expect(told).toEqual(remarks);
  const again = parseStatement(printStatement(value)).value;
  expect(outline(again), 'printed and read again').toBe(tree);
  expect(
    again.remarks.map(remark => `${remark.kind}: ${remark.text}`),
    'printed and read again',
  ).toEqual(remarks);
}
