import { randomBytes, scrypt } from 'node:crypto';
import { Fault } from '#core/errors.ts';
import { DataKey, presentForm } from './dataKey.ts';
import { seal, unseal } from './seal.ts';

/** Cost of scrypt (RFC 7914): it needs 128 × n × r bytes of memory. */
export interface ScryptCost {
  readonly n: number;
  readonly r: number;
  readonly p: number;
}

/** 128 MiB. The least that OWASP's Password Storage Cheat Sheet asks of scrypt with one lane: N 2^17, r 8, p 1. */
export const todaysCost: ScryptCost = { n: 2 ** 17, r: 8, p: 1 };

/** The data key sealed for one who may open it. A vault may have several, each opens it alone. */
export interface Wrap {
  readonly id: string;
  readonly kind: 'passphrase';
  /** 1: of a vault without an index. It says what the records below it are bound to. */
  readonly form: number;
  readonly cost: ScryptCost;
  readonly salt: Buffer;
  readonly sealedSecret: Buffer;
}

/** A wrap that `passphrase` opens, with a salt of its own. */
export async function wrapKey(key: DataKey, passphrase: string, cost: ScryptCost): Promise<Wrap> {
  const head = { id: randomBytes(8).toString('hex'), kind: 'passphrase', form: presentForm, cost, salt: randomBytes(16) } as const;
  const secret = key.bytes();
  const sealedSecret = seal(await derivedKey(passphrase, head.salt, cost), boundTo(head), secret);
  secret.fill(0);
  return { ...head, sealedSecret };
}

/**
 * The data key, or undefined when the passphrase is another.
 * @throws Fault client-record-damaged when the wrap asks for a cost that no Platewright ever wrote
 */
async function unwrapKey(wrap: Wrap, passphrase: string): Promise<DataKey | undefined> {
  if (!isKnownCost(wrap.cost))
    throw new Fault('client-record-damaged', 'What belongs to the passphrase is damaged, so that no record can be read.');
  const secret = unseal(await derivedKey(passphrase, wrap.salt, wrap.cost), boundTo(wrap), wrap.sealedSecret);
  return secret === undefined ? undefined : new DataKey(secret, wrap.form);
}

/** The data key of the first wrap that the passphrase opens. @throws Fault client-record-damaged */
export async function unwrapAny(wraps: readonly Wrap[], passphrase: string): Promise<DataKey | undefined> {
  for (const wrap of wraps) {
    const key = await unwrapKey(wrap, passphrase);
    if (key !== undefined) return key;
  }
  return undefined;
}

/** Whether a Platewright may have written it: at most twice today's work, so that a copy cannot take the machine's memory or minutes of its time. */
export function isKnownCost(cost: ScryptCost): boolean {
  const { n, r, p } = cost;
  const isPowerOfTwo = n > 1 && Number.isInteger(Math.log2(n));
  return isPowerOfTwo && r >= 1 && p >= 1 && memoryBytes(cost) * p <= 2 * memoryBytes(todaysCost);
}

function derivedKey(passphrase: string, salt: Buffer, cost: ScryptCost): Promise<Buffer> {
  const options = { N: cost.n, r: cost.r, p: cost.p, maxmem: 2 * memoryBytes(cost) + 2 ** 20 };
  return new Promise((done, failed) =>
    scrypt(sameText(passphrase), salt, 32, options, (error, key) => (error === null ? done(key) : failed(error))),
  );
}

function memoryBytes({ n, r }: ScryptCost): number {
  return 128 * n * r;
}

function boundTo({ id, kind, form, cost: { n, r, p }, salt }: Omit<Wrap, 'sealedSecret'>): Buffer {
  const whose = form === 1 ? '' : `${kind} ${id} `;
  return Buffer.concat([Buffer.from(`platewright secret ${form} ${whose}scrypt ${n} ${r} ${p} `), salt]);
}

/** Keyboards compose letters differently (é as one sign or two): the same passphrase must open everywhere. */
export function sameText(passphrase: string): string {
  return passphrase.normalize('NFKC');
}
