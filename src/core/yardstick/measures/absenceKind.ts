import type { z } from 'zod';
import type { Zod } from './numberKind.ts';

/** A kind of measure that looks for what must not be named on a label. */
export interface AbsenceKind<Schema extends z.ZodObject> extends AbsenceWords<Readonly<z.output<Schema>>> {
  readonly schema: (zod: Zod) => Schema;
}

interface AbsenceWords<Measure> {
  /** What a form calls it. */
  readonly title: string;
  /** What a form begins with. */
  readonly usual: () => Measure;
  /** As a list of tests names it: "phosphate additives". */
  readonly subject: (measure: Measure) => string;
  /** As a reason names one of it: "a phosphate additive". */
  readonly oneOfIt: (measure: Measure) => string;
}

/** A kind by its schema, then its words for the measures that the schema takes. */
export function absenceKind<Schema extends z.ZodObject>(
  schema: AbsenceKind<Schema>['schema'],
): (words: AbsenceWords<Readonly<z.output<Schema>>>) => AbsenceKind<Schema> {
  return words => ({ ...words, schema });
}
