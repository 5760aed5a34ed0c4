import { createHmac, hkdfSync, randomBytes } from 'node:crypto';
import { readJson } from '#adapters/storage/readJson.ts';
import type { ClientJson } from '#app/clientVault.ts';
import { isObject } from '#core/json/presentForm.ts';
import { seal, unseal } from './seal.ts';

export const dataKeyBytes = 64;

/** The form in which this program seals. Records of form 1 had no index. */
export const presentForm = 2;

/**
 * The random key of a vault. Its first half seals, the second names the rows: to who has no key a row's name is chance, and with the
 * key a record is found without opening the others. Passphrases only wrap it.
 */
export class DataKey {
  private readonly secret: Buffer;
  readonly form: number;

  /** @param secret 64 bytes; wiped by `forget`. */
  constructor(secret: Buffer, form = presentForm) {
    this.secret = secret;
    this.form = form;
  }

  static random(): DataKey {
    return new DataKey(randomBytes(dataKeyBytes));
  }

  /** A copy of the secret, to be wrapped or written. */
  bytes(): Buffer {
    return Buffer.from(this.secret);
  }

  rowOf(id: string): Buffer {
    return createHmac('sha256', this.namingKey()).update(id).digest();
  }

  toBody(record: ClientJson): Buffer {
    return this.sealAt(this.rowOf(record.id), Buffer.from(JSON.stringify(record)));
  }

  /** Undefined when the body is damaged or belongs to another row. */
  fromBody(row: Buffer, body: Buffer): ClientJson | undefined {
    const clear = unseal(this.sealingKey(), this.boundTo('client', row), body);
    return clear === undefined ? undefined : parsed(clear, id => this.rowOf(id).equals(row));
  }

  /** Bytes that are no record, sealed all the same: what is damaged must neither be lost nor lie in clear. */
  carry(row: Buffer, body: Buffer): { readonly row: Buffer; readonly body: Buffer } {
    const carried = createHmac('sha256', this.namingKey()).update('carried ').update(row).digest();
    return { row: carried, body: this.sealAt(carried, body) };
  }

  sealIndex(clear: Buffer): Buffer {
    return seal(this.indexKey(), this.boundTo('index'), clear);
  }

  openIndex(sealed: Buffer): Buffer | undefined {
    return unseal(this.indexKey(), this.boundTo('index'), sealed);
  }

  forget(): void {
    this.secret.fill(0);
  }

  private sealAt(row: Buffer, clear: Buffer): Buffer {
    return seal(this.sealingKey(), this.boundTo('client', row), clear);
  }

  private boundTo(what: string, row: Buffer = Buffer.alloc(0)): Buffer {
    return Buffer.concat([Buffer.from(`platewright ${what} ${this.form} `), row]);
  }

  private sealingKey(): Buffer {
    return this.secret.subarray(0, 32);
  }

  private namingKey(): Buffer {
    return this.secret.subarray(32, dataKeyBytes);
  }

  /** The index is written with every record: a key of its own (HKDF, RFC 5869) keeps random nonces far from meeting. */
  private indexKey(): Buffer {
    return Buffer.from(hkdfSync('sha256', this.secret, Buffer.alloc(0), 'platewright index', 32));
  }
}

function parsed(json: Buffer, belongs: (id: string) => boolean): ClientJson | undefined {
  return readJson(json.toString(), record => (isClientJson(record) && belongs(record.id) ? record : undefined));
}

export function isClientJson(value: unknown): value is ClientJson {
  return isObject(value) && typeof value.id === 'string' && typeof value.version === 'number';
}
