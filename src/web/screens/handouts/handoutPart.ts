import type { TypedHandout } from './typedHandout.ts';

/** What each part of the form is given: the handout, how to change it, and what is wrong at a place of its JSON. */
export interface HandoutPartProps {
  readonly typed: TypedHandout;
  readonly change: (change: Partial<TypedHandout>) => void;
  readonly wrong: (heading: string) => string | undefined;
}
