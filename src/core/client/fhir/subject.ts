import type { LabPerson } from '#core/client/labs/labPerson.ts';
import { isObject } from '#core/json/presentForm.ts';
import { isDay } from '#core/quantity/calendarDay.ts';

/** Whose results FHIR R4 holds, by a Patient beside them (name, birthDate), else by what the first subject is shown as. Never throws. */
export function personOfFhir(json: unknown): LabPerson {
  const resources = Array.isArray(json) ? json : isObject(json) && Array.isArray(json.entry) ? json.entry.map(resourceOf) : [json];
  const objects = resources.filter(isObject);
  const patient = objects.find(({ resourceType }) => resourceType === 'Patient');
  const shown = objects.map(({ subject }) => (isObject(subject) ? subject.display : undefined)).find(isText);
  const name = patient === undefined ? undefined : nameOf(patient.name);
  const bornOn = patient?.birthDate;
  return {
    ...(name !== undefined ? { name } : shown !== undefined ? { name: shown } : {}),
    ...(isText(bornOn) && isDay(bornOn) ? { bornOn } : {}),
  };
}

function resourceOf(entry: unknown): unknown {
  return isObject(entry) ? entry.resource : undefined;
}

/** HumanName: its text, or the given names and the family name. */
function nameOf(names: unknown): string | undefined {
  const first = Array.isArray(names) ? names.find(isObject) : undefined;
  if (first === undefined) return undefined;
  if (isText(first.text)) return first.text;
  const parts = [...(Array.isArray(first.given) ? first.given : []), first.family].filter(isText);
  return parts.length === 0 ? undefined : parts.join(' ');
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value.trim() !== '';
}
