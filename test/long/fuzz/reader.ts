import type { Chance } from './chance.ts';

/** One reader under the fuzzer: it makes an input and has it read. Whatever it throws but a fault of the catalogue is a crash. */
export interface Reader {
  readonly name: string;
  /** Of all inputs for readers, this one has `share` parts. */
  readonly share: number;
  /** Gives the input in short, so that a crash can be told with it. */
  readonly read: (chance: Chance, say: (input: unknown) => void) => unknown;
}
