import type { Token } from '#core/statement/text/token.ts';
import type { Remark, StatementIssueCode } from '../statement.ts';

/** What all levels of one statement share. */
export interface ReadState {
  readonly text: string;
  readonly tokens: readonly Token[];
  /** The token to read next. */
  at: number;
  readonly remarks: Remark[];
  readonly report: (code: StatementIssueCode, start: number, end: number, expected: string) => void;
}
