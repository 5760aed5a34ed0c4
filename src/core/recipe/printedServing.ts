import type { Interval } from '#core/quantity/interval.ts';
import type { Traced } from './content.ts';

/** What the label says of one serving: its mass, and the ranges of the figures it prints. */
export interface PrintedServingFacts {
  readonly servingG: Interval;
  readonly printed: Readonly<Partial<Record<Traced, Interval>>>;
}
