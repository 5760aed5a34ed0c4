import { Fault } from '#core/errors.ts';

/** The first bytes of a compound file ([MS-CFB], section 2.2), in which XLS files and workbooks with a password come. */
const compoundFile = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** The stream of a compound file that holds a workbook with a password ([MS-OFFCRYPTO], section 2.3.4.4), as its directory names it. */
const encryptedPackage = Buffer.from('EncryptedPackage', 'utf16le');

/** BOF records of workbooks before the compound file ([MS-XLS], section 2.4.21): type 9, versions 0, 2, 4 and 8. */
const beginOfFile = new Set([0x0009, 0x0209, 0x0409, 0x0809]);

/** @throws Fault workbook-encrypted, workbook-of-another-kind for a workbook that is no XLSX. */
/** JPEG, PNG, GIF, PDF. */
const pictureOrPage = [
  [0xff, 0xd8, 0xff],
  [0x89, 0x50, 0x4e, 0x47],
  [0x47, 0x49, 0x46, 0x38],
  [0x25, 0x50, 0x44, 0x46],
];

export function refuseOtherWorkbooks(bytes: Uint8Array): void {
  if (compoundFile.every((byte, at) => bytes[at] === byte)) {
    if (Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(encryptedPackage))
      throw new Fault('workbook-encrypted', 'The workbook is locked with a password.');
    throw new Fault('workbook-of-another-kind', 'The file is an XLS workbook or another file of that age.');
  }
  if (pictureOrPage.some(begin => begin.every((byte, at) => bytes[at] === byte)))
    throw new Fault('workbook-of-another-kind', 'The file is a picture or a PDF page, not a table.');
  const [type = 0, high = 0, length = 0, nothing] = bytes;
  if (beginOfFile.has(type + 256 * high) && length >= 4 && length <= 16 && nothing === 0)
    throw new Fault('workbook-of-another-kind', 'The file is an XLS workbook of an early version.');
}
