import type { ClientVault } from '#app/clientVault.ts';
import { assessmentFromJson, resultsFromJson } from '#core/client/assessmentFromJson.ts';
import type { Assessment } from '#core/client/client.ts';
import type { ClientRecord } from '#core/client/record.ts';
import { Fault, type Reading } from '#core/errors.ts';

/** @throws Fault client-not-found, clients-locked */
export async function recordOf(id: string, vault: ClientVault): Promise<ClientRecord> {
  const json = await vault.get(id);
  if (json === undefined) throw new Fault('client-not-found', 'The client is not in this workspace.');
  return json as unknown as ClientRecord;
}

/** Changes a record that nobody else has changed meanwhile. @throws Fault changed-meanwhile, client-not-found, clients-locked */
export async function changeRecord(
  id: string,
  seenVersion: number,
  vault: ClientVault,
  edit: (record: ClientRecord) => ClientRecord,
): Promise<ClientRecord> {
  const record = await recordOf(id, vault);
  return (await vault.put({ ...edit(record) }, seenVersion)) as unknown as ClientRecord;
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
