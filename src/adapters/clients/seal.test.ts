import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DataKey } from './dataKey.ts';
import { refuseWeak } from './newPassphrase.ts';
import { unwrapAny, wrapKey } from './passphrase.ts';
import { seal, unseal } from './seal.ts';

const hex = (text: string): Buffer => Buffer.from(text, 'hex');
const key = Buffer.alloc(32, 7);
const cheap = { n: 2 ** 10, r: 8, p: 1 };

// McGrew and Viega, "The Galois/Counter Mode of Operation (GCM)", submission to NIST, appendix B, test case 16.
test('[VLT-5] sealing is AES-256-GCM', () => {
  const published = {
    key: hex('feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308'),
    nonce: hex('cafebabefacedbaddecaf888'),
    bound: hex('feedfacedeadbeeffeedfacedeadbeefabaddad2'),
    clear: hex('d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39'),
    sealed: hex('522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662'),
    tag: hex('76fc6ece0f4e1768cddf8853bb2d551b'),
  };
  const sealed = Buffer.concat([published.nonce, published.tag, published.sealed]);
  expect(unseal(published.key, published.bound, sealed)).toEqual(published.clear);
});

// RFC 7914, section 12, third vector; its first 32 bytes are what a key of 32 bytes gives.
test('[VLT-6] a passphrase becomes a key by scrypt', async () => {
  const published = hex('7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2');
  const head = { id: 'one', kind: 'passphrase', form: 2, cost: { n: 16384, r: 8, p: 1 }, salt: Buffer.from('SodiumChloride') } as const;
  const secret = Buffer.alloc(64, 9);
  const sealedSecret = seal(published, Buffer.from('platewright secret 2 passphrase one scrypt 16384 8 1 SodiumChloride'), secret);
  expect((await unwrapAny([{ ...head, sealedSecret }], 'pleaseletmein'))?.bytes()).toEqual(secret);
});

test('[VLT-6] a passphrase opens however the keyboard composes its letters', async () => {
  const wrap = await wrapKey(new DataKey(Buffer.alloc(64, 9)), 'caf\u00e9 at the corner', cheap);
  expect((await unwrapAny([wrap], 'cafe\u0301 at the corner'))?.bytes()).toEqual(Buffer.alloc(64, 9));
  expect(await unwrapAny([wrap], 'cafe at the corner')).toBeUndefined();
});

test('[VLT-6] one key may have several wraps, each opened by its own passphrase alone', async () => {
  const data = new DataKey(Buffer.alloc(64, 9));
  const wraps = [await wrapKey(data, 'one heron by the weir', cheap), await wrapKey(data, 'two geese on the lake', cheap)];
  for (const passphrase of ['one heron by the weir', 'two geese on the lake'])
    expect((await unwrapAny(wraps, passphrase))?.bytes()).toEqual(Buffer.alloc(64, 9));
  expect(await unwrapAny(wraps, 'no bird on any water')).toBeUndefined();
});

// NIST SP 800-63B-4, 3.1.1.2: compared with what is expected or commonly used; no other rules of composition. Which words: own decision.
test('[VLT-4] what is guessed first is refused, whatever its length; a few unrelated words are not', () => {
  for (const first of [
    'aaaaaaaaaaaaaaaaaaaa',
    'abababababababababab',
    '123456789012345678',
    'abcdefghijklmnopq',
    'qwertyuiopasdfghjkl',
    'Password Password 2026',
    'platewright passphrase',
    'kidneykidneykidney',
    'treetreetreetreetree',
    '                    ',
    '!!!!!!!!!!!!!!!!!!',
  ])
    expect(() => refuseWeak(first), first).toThrow(expect.objectContaining({ code: 'passphrase-too-common' }));
  for (const good of [
    'correct horse battery',
    'seven herons by the weir',
    'mustard tram orchid',
    'ein Reiher am Wehr',
    '漢字仮名交じり文は十五文字以上です',
    'x9$kQ2!vR7#mZ4&p',
  ])
    expect(() => refuseWeak(good), good).not.toThrow();
});

test('[VLT-5] what was sealed comes back, and never the same bytes twice', () => {
  fc.assert(
    fc.property(fc.uint8Array(), fc.uint8Array(), (clear, bound) => {
      const [one, other] = [seal(key, Buffer.from(bound), Buffer.from(clear)), seal(key, Buffer.from(bound), Buffer.from(clear))];
      expect(unseal(key, Buffer.from(bound), one)).toEqual(Buffer.from(clear));
      expect(one.equals(other)).toBe(false);
    }),
  );
});

test('[VLT-8] one bit changed, one byte cut, another key or another place: it does not open', () => {
  fc.assert(
    fc.property(fc.uint8Array(), fc.nat(), fc.nat(7), (clear, at, bit) => {
      const place = Buffer.from('here');
      const sealed = seal(key, place, Buffer.from(clear));
      const changed = Buffer.from(sealed);
      changed[at % sealed.length]! ^= 1 << bit;
      expect(unseal(key, place, changed)).toBeUndefined();
      expect(unseal(key, place, sealed.subarray(0, at % sealed.length))).toBeUndefined();
      expect(unseal(Buffer.alloc(32, 8), place, sealed)).toBeUndefined();
      expect(unseal(key, Buffer.from('there'), sealed)).toBeUndefined();
    }),
  );
});
