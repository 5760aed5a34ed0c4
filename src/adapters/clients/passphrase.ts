import { randomBytes, scrypt } from 'node:crypto';
import { Fault } from '#core/errors.ts';
import { seal, unseal } from './seal.ts';

/** Cost of scrypt (RFC 7914): it needs 128 × n × r bytes of memory. */
export interface ScryptCost {
  readonly n: number;
  readonly r: number;
  readonly p: number;
}

/** 128 MiB. The least that OWASP's Password Storage Cheat Sheet asks of scrypt with one lane: N 2^17, r 8, p 1. */
export const todaysCost: ScryptCost = { n: 2 ** 17, r: 8, p: 1 };

/** How a passphrase opens the secret under which the records stand. */
export interface PassphraseLock {
  readonly cost: ScryptCost;
  readonly salt: Buffer;
  readonly sealedSecret: Buffer;
}

const leastCharacters = 12;

/** @throws Fault passphrase-too-short */
export function refuseShort(passphrase: string): void {
  const characters = [...sameText(passphrase)].length;
  if (characters < leastCharacters) throw new Fault('passphrase-too-short', `It needs ${leastCharacters} characters or more.`);
}

/** A lock that `passphrase` opens, with a salt of its own. */
export async function lockSecret(secret: Buffer, passphrase: string, cost: ScryptCost): Promise<PassphraseLock> {
  const salt = randomBytes(16);
  const key = await derivedKey(passphrase, salt, cost);
  return { cost, salt, sealedSecret: seal(key, boundTo(salt, cost), secret) };
}

/**
 * The secret, or undefined when the passphrase is another.
 * @throws Fault client-record-damaged when the lock asks for a cost that no Platewright ever wrote
 */
export async function openLock(lock: PassphraseLock, passphrase: string): Promise<Buffer | undefined> {
  const { n, r, p } = lock.cost;
  const isPowerOfTwo = n > 1 && Number.isInteger(Math.log2(n));
  if (!isPowerOfTwo || r < 1 || p < 1 || p > 16 || memoryBytes(lock.cost) > 2 ** 31)
    throw new Fault('client-record-damaged', 'What belongs to the passphrase is damaged, so that no record can be read.');
  const key = await derivedKey(passphrase, lock.salt, lock.cost);
  return unseal(key, boundTo(lock.salt, lock.cost), lock.sealedSecret);
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

function boundTo(salt: Buffer, { n, r, p }: ScryptCost): Buffer {
  return Buffer.concat([Buffer.from(`platewright secret 1 scrypt ${n} ${r} ${p} `), salt]);
}

/** Keyboards compose letters differently (é as one sign or two): the same passphrase must open everywhere. */
function sameText(passphrase: string): string {
  return passphrase.normalize('NFKC');
}
