import { Fault, type FaultCode, type Issue, type Reading } from '#core/errors.ts';
import { isNewerForm } from '#core/json/presentForm.ts';

/** What was read, or the fault that names every place where it could not be. @throws Fault of the code given */
export function wholeOr<Value>({ value, issues }: Reading<Value | undefined>, code: FaultCode, whole: string): Value {
  if (value === undefined) throw new Fault(code, placesText(issues, whole));
  return value;
}

/** "portion.grams: found -1, expected more than 0; …"; `whole` names what has no place of its own. */
export function placesText(issues: readonly Issue[], whole: string): string {
  return issues.map(({ place, found, expected }) => `${place.heading ?? whole}: found ${found}, expected ${expected}`).join('; ');
}

/**
 * Refuses to write over a document that a newer program wrote: what this one does not know of it would be lost.
 * @throws Fault document-not-valid
 */
export function refuseNewer(kept: { readonly value: unknown } | undefined, codec: (json: unknown) => Reading<unknown>): void {
  if (kept !== undefined && isNewerForm(codec(kept.value).issues))
    throw new Fault('document-not-valid', 'It was written by a newer program. Open the workspace with that one; nothing was changed.');
}
