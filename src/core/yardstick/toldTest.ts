import type { Bound } from './bound.ts';
import { type BoundTest, boundOf } from './boundTest.ts';
import { marginText, quantityText } from './figureText.ts';
import { factsOf } from './measures/measureFacts.ts';
import type { NumberMeasure } from './measures/measureKinds.ts';
import type { MeasureFacts } from './measures/numberKind.ts';
import { sourceText } from './sourceText.ts';
import type { TestVerdict } from './yardstick.ts';

/** A test with all that its sentences repeat for every food, put into words once. */
export interface ToldTest {
  readonly test: BoundTest;
  readonly facts: MeasureFacts<NumberMeasure>;
  readonly bound: Bound;
  readonly isMinimum: boolean;
  readonly useEstimates: boolean;
  readonly slack: number;
  readonly decimals: number;
  /** "at most 140 mg", "sodium in mg no more than energy in kcal". */
  readonly boundWords: string;
  readonly slackWords: string;
  readonly sourceWords: string;
}

export function toldTest(test: BoundTest): ToldTest {
  const bound = boundOf(test);
  const slack = test.slack ?? 0;
  const facts = factsOf(test.measure);
  return {
    test,
    facts,
    bound,
    isMinimum: bound.kind === 'atLeast',
    useEstimates: test.useEstimates ?? false,
    slack,
    decimals: facts.decimals(bound),
    boundWords: facts.boundWords(bound),
    slackWords: quantityText(String(slack), facts.unit),
    sourceWords: sourceText(test.source),
  };
}

/** "20 mg to spare", "10 mg over", with a decimal more where the margin has one; undefined where there is no margin. */
export function toldMargin({ facts, isMinimum, decimals }: ToldTest, { verdict, margin }: TestVerdict): string | undefined {
  if (margin === undefined) return undefined;
  const finer = Number.isInteger(margin) ? 0 : 1;
  return marginText(margin, verdict === 'fits', isMinimum, facts.unit, decimals + finer);
}
