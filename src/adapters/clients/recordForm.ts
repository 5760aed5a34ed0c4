import { createHmac } from 'node:crypto';
import type { ClientJson } from '#app/clientVault.ts';
import { seal, unseal } from './seal.ts';

/** How a record stands in the file: under which row, as which bytes. */
export interface RecordForm {
  rowOf(id: string): Buffer;
  toBody(row: Buffer, record: ClientJson): Buffer;
  /** Undefined when the body is damaged or belongs to another row. */
  fromBody(row: Buffer, body: Buffer): ClientJson | undefined;
  /** Wipes the keys. */
  forget(): void;
}

/** JSON as it is, under its id. */
export const plainForm: RecordForm = {
  rowOf: id => Buffer.from(id),
  toBody: (_row, record) => Buffer.from(JSON.stringify(record)),
  fromBody: (row, body) => parsed(body, id => Buffer.from(id).equals(row)),
  forget: () => undefined,
};

export const secretBytes = 64;

/**
 * Sealed JSON. The first half of the secret seals, the second names the rows: to who has no key a row's name is chance,
 * and with the key a record is found without opening the others.
 */
export function sealedForm(secret: Buffer): RecordForm {
  const sealingKey = secret.subarray(0, 32);
  const namingKey = secret.subarray(32, secretBytes);
  const rowOf = (id: string): Buffer => createHmac('sha256', namingKey).update(id).digest();
  return {
    rowOf,
    toBody: (row, record) => seal(sealingKey, boundTo(row), Buffer.from(JSON.stringify(record))),
    fromBody: (row, body) => {
      const clear = unseal(sealingKey, boundTo(row), body);
      return clear === undefined ? undefined : parsed(clear, id => rowOf(id).equals(row));
    },
    forget: () => void secret.fill(0),
  };
}

function boundTo(row: Buffer): Buffer {
  return Buffer.concat([Buffer.from('platewright client 1 '), row]);
}

function parsed(json: Buffer, belongs: (id: string) => boolean): ClientJson | undefined {
  try {
    const record: unknown = JSON.parse(json.toString());
    return isClientJson(record) && belongs(record.id) ? record : undefined;
  } catch {
    // The parser's own words would quote the record.
    return undefined;
  }
}

function isClientJson(value: unknown): value is ClientJson {
  return (
    typeof value === 'object' &&
    value !== null &&
    'id' in value &&
    typeof value.id === 'string' &&
    'version' in value &&
    typeof value.version === 'number'
  );
}
