import type { AdditiveFinding } from '#core/additive/additive.ts';
import type { JsonObject } from './answerLines.ts';

/** An additive as docs/formats.md describes it. */
export function additiveToJson(finding: AdditiveFinding): JsonObject {
  const { name, ins, class: additiveClass, counts, certainty, found, start, end, path, why } = finding;
  return { name, ins, class: additiveClass, counts, certainty, found, start, end, path, why };
}
