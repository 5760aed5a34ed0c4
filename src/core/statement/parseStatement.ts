import type { Issue, Reading } from '#core/errors.ts';
import { finishDrafts } from './reading/finishDrafts.ts';
import { readList } from './reading/readList.ts';
import type { ReadState } from './reading/readState.ts';
import type { Statement, StatementIssueCode } from './statement.ts';
import { codePointPositions } from './text/codePoints.ts';
import type { Token } from './text/token.ts';
import { tokenize } from './text/tokenize.ts';

export interface StatementReading extends Reading<Statement, StatementIssueCode> {
  /** The text cut into words and separators, for those who look at it again. */
  readonly tokens: readonly Token[];
}

/** Longer than any package carries: told, and read all the same. The longest of 9,541 real statements has 4,643 characters. */
const longestPlausible = 50_000;

/**
 * Reads an ingredient statement as printed into a tree. Never throws, whatever the text; linear in its length.
 *
 * `parseStatement('WATER, CONTAINS 2% OR LESS OF: SALT')` gives two ingredients: WATER with a share of 98 to 100 %,
 * SALT with at most 2 %. Rules STM-1 to STM-18 in docs/rules/statement.md; law: 21 CFR 101.4.
 */
export function parseStatement(text: string): StatementReading {
  const { tokens, damaged } = tokenize(text);
  const position = codePointPositions(text);
  const issues: Issue<StatementIssueCode>[] = [];
  const report = (code: StatementIssueCode, start: number, end: number, expected: string): void => {
    issues.push({ code, place: { start: position(start), end: position(end) }, found: excerpt(text, start, end), expected });
  };

  if (!tokens.some(token => token.kind === 'word')) report('statement-empty', 0, text.length, 'the ingredients as printed');
  if (text.length > longestPlausible)
    report('text-too-long', 0, text.length, `at most ${longestPlausible} characters, more than any package carries`);
  if (damaged) report('text-damaged', 0, text.length, 'text without characters that a wrong encoding leaves');

  const state: ReadState = { text, tokens, at: 0, remarks: [], report };
  const drafts = readList(state, undefined, 0);
  const last = tokens.at(-1);
  if (last !== undefined && (last.kind === 'comma' || last.kind === 'open'))
    report('statement-cut-off', last.start, last.end, 'the rest of the statement: read the package again');

  const ingredients = finishDrafts(drafts, position, report);
  const remarks = state.remarks.map(remark => ({ ...remark, start: position(remark.start), end: position(remark.end) }));
  return { value: { text, ingredients, remarks }, issues, tokens };
}

function excerpt(text: string, start: number, end: number): string {
  const longest = 60;
  return end - start <= longest ? text.slice(start, end) : `${text.slice(start, start + longest)}…`;
}
