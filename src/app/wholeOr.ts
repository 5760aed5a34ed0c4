import { Fault, type FaultCode, type Issue, type Reading } from '#core/errors.ts';

/** What was read, or the fault that names every place where it could not be. @throws Fault of the code given */
export function wholeOr<Value>({ value, issues }: Reading<Value | undefined>, code: FaultCode, whole: string): Value {
  if (value === undefined) throw new Fault(code, placesText(issues, whole));
  return value;
}

/** "portion.grams: found -1, expected more than 0; …"; `whole` names what has no place of its own. */
export function placesText(issues: readonly Issue[], whole: string): string {
  return issues.map(({ place, found, expected }) => `${place.heading ?? whole}: found ${found}, expected ${expected}`).join('; ');
}
