import type { FindingCode } from '#core/label/label.ts';

/** Why a label of the demo is not as it should be, and what a reader of it must notice. */
export interface Oddity {
  /** For people: what is odd, one sentence. */
  readonly why: string;
  /** The audit findings the label must have; none when the oddity is in the food or its words. */
  readonly findings: readonly FindingCode[];
  /** Cells printed other than the recipe says, by CSV heading. */
  readonly printed?: Readonly<Record<string, string>>;
  /** Words of the statement printed other than the recipe says. */
  readonly misprint?: { readonly right: string; readonly wrong: string };
}
