import type { LabResult } from '#core/client/assessment/assessment.ts';
import { collectLabs, drawnFromWords, type LabIssue, type LabIssueCode, labUnit, readLabResult } from '#core/client/labs/readLabResult.ts';
import type { Place, Reading } from '#core/errors.ts';
import { isSameJson } from '#core/json/isSameJson.ts';
import { loincCode } from './loinc.ts';
import { ucumFromUnit, ucumSystem } from './ucum.ts';

type Json = Readonly<Record<string, unknown>>;

const loincSystem = 'http://loinc.org';
/** HL7 Version 2 table 0493, specimen condition. */
const specimenConditionSystem = 'http://terminology.hl7.org/CodeSystem/v2-0493';
const finished: readonly unknown[] = ['final', 'amended', 'corrected'];

/**
 * Laboratory results from FHIR R4: a Bundle, an Observation, or an array of Observations, by LOINC code and UCUM unit (hl7.org/fhir/R4/observation.html).
 * What cannot be read is left out and named by its place ("entry[3].resource"). Results of several subjects are refused as a whole.
 * Never throws.
 */
export function labsFromFhir(json: unknown): Reading<readonly LabResult[], LabIssueCode> {
  const found = observationsOf(json);
  if (found === undefined) {
    const issue = {
      code: 'lab-file-not-read',
      place: {},
      found: kindOf(json),
      expected: 'a FHIR R4 Bundle, an Observation, or an array of Observations',
    } as const;
    return { value: [], issues: [issue] };
  }
  const { observations, others } = found;
  const subjects = differentSubjects(observations);
  if (subjects > 1) {
    const issue = {
      code: 'lab-more-than-one-client',
      place: {},
      found: `results of ${subjects} different subjects`,
      expected: 'the results of one client; nothing was read',
    } as const;
    return { value: [], issues: [issue] };
  }
  const read = collectLabs(observations.map(({ observation, place }) => ({ read: readObservation(observation, place), place })));
  return { value: read.value, issues: [...others, ...read.issues] };
}

/** How many subjects the results have; those without one count as one. */
function differentSubjects(observations: readonly Placed[]): number {
  const found: unknown[] = [];
  for (const { observation } of observations) {
    const subject = observation.subject ?? null;
    if (!found.some(one => isSameJson(one, subject))) found.push(subject);
  }
  return found.length;
}

interface Placed {
  readonly observation: Json;
  readonly place: Place;
}

function observationsOf(json: unknown): { observations: Placed[]; others: LabIssue[] } | undefined {
  const resources: [resource: unknown, heading: string][] | undefined = Array.isArray(json)
    ? json.map((resource, at) => [resource, `[${at}]`])
    : !isObject(json)
      ? undefined
      : json.resourceType === 'Observation'
        ? [[json, 'Observation']]
        : json.resourceType === 'Bundle'
          ? listOf(json.entry).map((entry, at) => [isObject(entry) ? entry.resource : undefined, `entry[${at}].resource`])
          : undefined;
  if (resources === undefined) return undefined;
  const observations: Placed[] = [];
  const others: LabIssue[] = [];
  for (const [resource, heading] of resources) {
    if (isObject(resource) && resource.resourceType === 'Observation') observations.push({ observation: resource, place: { heading } });
    else
      others.push({
        code: 'lab-entry-not-read',
        place: { heading },
        found: kindOf(resource),
        expected: 'an Observation; this is left alone',
      });
  }
  return { observations, others };
}

function readObservation(observation: Json, place: Place): LabResult | LabIssue {
  const issue = (code: LabIssueCode, found: string, expected: string): LabIssue => ({ code, place, found, expected });
  const codings = codingsOf(observation.code).filter(({ system }) => system === loincSystem);
  const codes = codings.map(({ code }) => told(code));
  const known = codes.flatMap(code => loincCode(code) ?? []);
  const [code] = known;
  if (code === undefined || known.some(({ analyte }) => analyte !== code.analyte)) {
    const told = codes.length === 0 ? 'no LOINC code' : codes.join(', ');
    return issue('lab-analyte-not-known', told, 'one LOINC code of docs/formats.md; the result is left out');
  }
  if (!finished.includes(observation.status)) {
    return issue(
      'lab-not-final',
      `${code.code} with status ${told(observation.status)}`,
      'final, amended or corrected; the result is left out',
    );
  }
  const quantity = observation.valueQuantity;
  if (!isObject(quantity) || typeof quantity.value !== 'number' || quantity.comparator !== undefined) {
    const found =
      isObject(quantity) && quantity.comparator !== undefined ? `${told(quantity.comparator)}${told(quantity.value)}` : 'no figure';
    return issue('lab-value-not-a-number', `${code.code}: ${found}`, 'a valueQuantity with one figure; the result is left out');
  }
  const unit = unitOf(quantity, code.units);
  if (unit === undefined) {
    const found = `${code.code} with code ${told(quantity.code)} and unit ${told(quantity.unit)}`;
    return issue('lab-unit-not-known', found, 'one unit; the result is left out');
  }
  const [day = '', time] = told(observation.effectiveDateTime ?? observation.effectiveInstant ?? '').split('T');
  const lowerNormal = normalOf(observation, 'low', unit, code.units);
  const upperNormal = normalOf(observation, 'high', unit, code.units);
  const method = isObject(observation.method) ? told(observation.method.text) : '';
  const marks = new Set([drawnFromWords(method), ...known.map(({ drawn }) => drawn)].filter(one => one !== undefined));
  if (marks.size > 1)
    return issue('lab-drawn-in-conflict', `${code.code}: ${[...marks].join(' and ')}`, 'one of the two; the result is left out');
  const [drawn] = marks;
  return readLabResult(
    {
      analyte: code.analyte,
      value: quantity.value,
      unit,
      units: known.flatMap(({ units }) => units),
      day,
      ...(time === undefined ? {} : { time: time.slice(0, 5) }),
      ...(lowerNormal === undefined ? {} : { lowerNormal }),
      ...(upperNormal === undefined ? {} : { upperNormal }),
      ...(drawn === undefined ? {} : { drawn }),
      hemolyzed: isHemolyzed(observation),
    },
    place,
  );
}

/** The UCUM code in the workbench's spelling, else the unit as printed; undefined where the two contradict each other. */
function unitOf(quantity: Json, units: readonly string[]): string | undefined {
  const printed = typeof quantity.unit === 'string' ? labUnit(quantity.unit, units) : '';
  if (quantity.system !== ucumSystem || typeof quantity.code !== 'string' || quantity.code === '') return printed;
  const code = quantity.code;
  const coded = units.find(unit => ucumFromUnit(unit) === code) ?? labUnit(code, units);
  const contradicted = printed !== coded && units.includes(printed) && ucumFromUnit(printed) !== ucumFromUnit(coded);
  return contradicted ? undefined : coded;
}

/** The upper end of the one reference range that the laboratory sends without a type, in the unit of the result. */
function normalOf(observation: Json, end: 'low' | 'high', unit: string, units: readonly string[]): number | undefined {
  const ranges = listOf(observation.referenceRange).filter(isObject);
  const limit = ranges.length === 1 ? ranges[0]?.[end] : undefined;
  if (!isObject(limit) || typeof limit.value !== 'number') return undefined;
  return unitOf(limit, units) === unit ? limit.value : undefined;
}

function isHemolyzed(observation: Json): boolean {
  return listOf(observation.contained)
    .filter(isObject)
    .filter(({ resourceType }) => resourceType === 'Specimen')
    .flatMap(specimen => listOf(specimen.condition).flatMap(codingsOf))
    .some(({ system, code }) => system === specimenConditionSystem && code === 'HEM');
}

function codingsOf(concept: unknown): readonly Json[] {
  return isObject(concept) ? listOf(concept.coding).filter(isObject) : [];
}

function kindOf(json: unknown): string {
  if (isObject(json)) return typeof json.resourceType === 'string' ? json.resourceType : 'an object without resourceType';
  return json === undefined || json === null ? 'nothing' : typeof json;
}

function told(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : 'nothing';
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
