import type { Issue, Reading } from '#core/errors.ts';
import { shownJson } from './shownJson.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** From one form to the next: `formSteps[0]` makes form 2 of form 1. */
export type FormStep = (json: JsonObject) => JsonObject;

/**
 * JSON that is kept, brought to the form that this program writes. `format` tells its form, 1 where it is missing; each step makes the next
 * one of it, and the key itself is taken off. What is no object goes on as it is, for the schema to refuse. A form from a newer program is
 * refused by name: reading half of it would lose the rest with the next change.
 */
export function presentForm(value: unknown, steps: readonly FormStep[]): Reading<unknown, 'json-format-not-known'> {
  if (!isObject(value)) return { value, issues: [] };
  const { format = 1, ...json } = value;
  const present = steps.length + 1;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1 || format > present)
    return { value: undefined, issues: [notKnown(format, present)] };
  return { value: steps.slice(format - 1).reduce((earlier: JsonObject, step) => step(earlier), json), issues: [] };
}

/** Whether JSON was refused because a newer program wrote it: then nothing is wrong with it. */
export function isNewerForm(issues: readonly Issue[]): boolean {
  return issues.some(({ code }) => code === 'json-format-not-known');
}

function notKnown(format: unknown, present: number): Issue<'json-format-not-known'> {
  return {
    code: 'json-format-not-known',
    place: { heading: 'format' },
    found: shownJson(format),
    expected: `a form up to ${present}; a newer program writes others, and reads this one`,
  };
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
