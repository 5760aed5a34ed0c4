import { isClient } from '#app/clients/clinicFigures.ts';
import type { ClientVault } from '#app/clientVault.ts';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { assessmentFromJson, resultsFromJson } from '#core/client/assessment/assessmentJson.ts';
import {
  type ClientRecordJson,
  clientRecordFromJson,
  clientRecordToJson,
  wholeClientRecord,
} from '#core/client/record/clientRecordJson.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { Fault, type Reading } from '#core/errors.ts';

/** @throws Fault client-not-found, clients-locked, client-record-damaged */
export async function recordOf(id: string, vault: ClientVault): Promise<ClientRecord> {
  const json = await vault.get(id);
  if (json === undefined) throw new Fault('client-not-found', 'The client is not in this workspace.');
  return wholeClientRecord(json);
}

/** Changes a record that nobody else has changed meanwhile. @throws Fault changed-meanwhile, client-not-found, clients-locked, client-record-damaged */
export async function changeRecord(
  id: string,
  seenVersion: number,
  vault: ClientVault,
  edit: (record: ClientRecord) => ClientRecord,
): Promise<ClientRecord> {
  const record = await recordOf(id, vault);
  return wholeClientRecord(await vault.put(readable(clientRecordToJson(edit(record))), seenVersion));
}

/** Keeps a client who is new. @throws Fault changed-meanwhile, clients-locked */
export async function addRecord(record: ClientRecord, vault: ClientVault): Promise<ClientRecord> {
  return wholeClientRecord(await vault.put(readable(clientRecordToJson(record)), null));
}

/** Looked at before it is written: what could not be read again would take the whole record with it. @throws Fault request-not-valid */
function readable(json: ClientRecordJson): ClientRecordJson {
  const { value, issues } = clientRecordFromJson(JSON.parse(JSON.stringify(json)));
  // The places, never the values.
  const places = issues.map(({ place, expected }) => `${place.heading ?? 'the record'}: expected ${expected}`);
  if (value === undefined) throw new Fault('request-not-valid', places.slice(0, 5).join('; '));
  return json;
}

/** Every record that can be read: one that is damaged hides no other, and is told when it is opened. @throws Fault clients-locked */
export async function allRecords(vault: ClientVault): Promise<readonly ClientRecord[]> {
  return (await vault.list()).filter(isClient).flatMap(json => {
    try {
      return [wholeClientRecord(json)];
    } catch (error) {
      if (error instanceof Fault && (error.code === 'client-record-damaged' || error.code === 'client-record-newer')) return [];
      throw error;
    }
  });
}

/** @throws Fault assessment-not-valid */
export function readAssessment(json: unknown): Assessment {
  return wholeOr(assessmentFromJson(json));
}

/** @throws Fault assessment-not-valid */
export function readResults(json: unknown): Pick<Assessment, 'labs' | 'weighings'> {
  return wholeOr(resultsFromJson(json));
}

function wholeOr<Value>({ value, issues }: Reading<Value | undefined>): Value {
  if (value === undefined) {
    // The places, never the values: what was typed is the client's.
    const places = issues.map(({ place, expected }) => `${place.heading ?? 'the assessment'}: expected ${expected}`);
    throw new Fault('assessment-not-valid', places.slice(0, 5).join('; '));
  }
  return value;
}
