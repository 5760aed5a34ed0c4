/** The kinds of picture that are kept and shown. */
export type PhotoType = 'image/jpeg' | 'image/png' | 'image/webp';

/** Largest photo that is kept, in bytes. */
export const largestPhoto = 10 * 2 ** 20;

/** Longest side that is kept: a few bytes of PNG may ask a browser for gigabytes of pixels. */
const longestSide = 20_000;

/**
 * What a picture is by its bytes, whatever its name or its sender say; undefined for anything that is no whole JPEG, PNG or WebP.
 * Beyond the first bytes its frame is walked: a size, and an end, as its format asks for (ISO/IEC 10918-1, annex B; PNG 3rd edition,
 * section 5; RFC 9649). Pixels are not decoded.
 */
export function photoType(bytes: Uint8Array): PhotoType | undefined {
  if (bytes.length === 0 || bytes.length > largestPhoto) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (isPng(view)) return 'image/png';
    if (isJpeg(view)) return 'image/jpeg';
    if (isWebp(view)) return 'image/webp';
  } catch (error) {
    // A length that leads out of the file.
    if (!(error instanceof RangeError)) throw error;
  }
  return undefined;
}

function isSide(pixels: number): boolean {
  return pixels > 0 && pixels <= longestSide;
}

/** Signature, IHDR first with a size, data, IEND last. */
function isPng(view: DataView): boolean {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return false;
  if (view.getUint32(8) !== 13 || ascii(view, 12, 4) !== 'IHDR') return false;
  if (!isSide(view.getUint32(16)) || !isSide(view.getUint32(20))) return false;
  let hasData = false;
  for (let at = 8; ; ) {
    const length = view.getUint32(at);
    const type = ascii(view, at + 4, 4);
    if (type === 'IDAT') hasData = true;
    at += 12 + length;
    if (type === 'IEND') return hasData && at <= view.byteLength;
  }
}

/** SOI, segments of which one is a frame with a size, a scan, EOI somewhere at the end. */
function isJpeg(view: DataView): boolean {
  if (view.getUint16(0) !== 0xffd8) return false;
  let hasFrame = false;
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) return false;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xda) return hasFrame && hasEnd(view, at);
    // No segment of a header stands without a length; an end before a scan is no picture.
    if (marker < 0xc0 || (marker >= 0xd0 && marker <= 0xd9)) return false;
    const length = view.getUint16(at + 2);
    if (length < 2) return false;
    const isFrame = marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) {
      if (!isSide(view.getUint16(at + 5)) || !isSide(view.getUint16(at + 7))) return false;
      hasFrame = true;
    }
    at += 2 + length;
  }
}

/** Cameras write a second picture or their own bytes behind the end, so it is looked for from behind. */
function hasEnd(view: DataView, from: number): boolean {
  for (let at = view.byteLength - 2; at > from; at -= 1) if (view.getUint16(at) === 0xffd9) return true;
  return false;
}

/** RIFF of the file's own length, WEBP, and first chunk one of the three that begin a picture, with a size. */
function isWebp(view: DataView): boolean {
  if (ascii(view, 0, 4) !== 'RIFF' || ascii(view, 8, 4) !== 'WEBP') return false;
  const whole = view.getUint32(4, true) + 8;
  const first = view.getUint32(16, true);
  if (whole > view.byteLength || 20 + first > whole) return false;
  switch (ascii(view, 12, 4)) {
    case 'VP8 ':
      return view.getUint8(23) === 0x9d && view.getUint8(24) === 0x01 && view.getUint8(25) === 0x2a && isSides(view, 26);
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return view.getUint8(20) === 0x2f && isSide((bits & 0x3fff) + 1) && isSide(((bits >> 14) & 0x3fff) + 1);
    }
    case 'VP8X':
      return first >= 10 && isSide((view.getUint32(24, true) & 0xffffff) + 1) && isSide((view.getUint32(26, true) >>> 8) + 1);
    default:
      return false;
  }
}

function isSides(view: DataView, at: number): boolean {
  return isSide(view.getUint16(at, true) & 0x3fff) && isSide(view.getUint16(at + 2, true) & 0x3fff);
}

function ascii(view: DataView, at: number, length: number): string {
  let text = '';
  for (let next = at; next < at + length; next += 1) text += String.fromCharCode(view.getUint8(next));
  return text;
}
