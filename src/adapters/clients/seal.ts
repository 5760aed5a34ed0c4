import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

const nonceBytes = 12;
const tagBytes = 16;

/**
 * AES-256-GCM (NIST SP 800-38D): nonce of 96 random bits, tag of 128 bits, ciphertext, in this order. `bound` is not
 * kept, but opening needs the same: a sealed text moved to another place does not open.
 */
export function seal(key: Buffer, bound: Buffer, clear: Buffer): Buffer {
  const nonce = randomBytes(nonceBytes);
  const cipher = createCipheriv('aes-256-gcm', key, nonce, { authTagLength: tagBytes }).setAAD(bound);
  const body = Buffer.concat([cipher.update(clear), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), body]);
}

/** Undefined when key or `bound` is another, or a bit was changed. */
export function unseal(key: Buffer, bound: Buffer, sealed: Buffer): Buffer | undefined {
  if (sealed.length < nonceBytes + tagBytes) return undefined;
  const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, nonceBytes), { authTagLength: tagBytes }).setAAD(bound);
  decipher.setAuthTag(sealed.subarray(nonceBytes, nonceBytes + tagBytes));
  try {
    return Buffer.concat([decipher.update(sealed.subarray(nonceBytes + tagBytes)), decipher.final()]);
  } catch {
    return undefined;
  }
}
