import { faultCatalogue } from './faultCatalogue.ts';

export type FaultCode = keyof typeof faultCatalogue;

export class Fault extends Error {
  readonly code: FaultCode;

  constructor(code: FaultCode, message: string) {
    super(message);
    this.name = 'Fault';
    this.code = code;
  }

  get title(): string {
    return faultCatalogue[this.code].title;
  }

  get nextStep(): string {
    return faultCatalogue[this.code].nextStep;
  }
}

/** Where in outside text something was noticed. Positions are code points, end exclusive; rows and lines count from 1. */
export interface Place {
  /** Name of the file, where several are read together. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly row?: number;
  readonly heading?: string;
  readonly start?: number;
  readonly end?: number;
}

/** Something about outside text. `code` is permanent; `found` and `expected` are in the person's words. */
export interface Issue<Code extends string = string> {
  readonly code: Code;
  readonly place: Place;
  readonly found: string;
  readonly expected: string;
}

/** What reading outside text gives: as much as could be read, and the issues on the way. */
export interface Reading<Value, Code extends string = string> {
  readonly value: Value;
  readonly issues: readonly Issue<Code>[];
}

/** Where an error happened, and no more: its message, which the stack begins with, may quote what a person typed, in lines that look like places. */
export function thrownAt({ stack = '', message }: Error): readonly string[] {
  if (!stack.includes(message)) return [];
  const lines = stack.slice(stack.indexOf(message) + message.length).split('\n');
  return lines.filter(line => line.trimStart().startsWith('at '));
}
