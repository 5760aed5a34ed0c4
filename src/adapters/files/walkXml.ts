import { TextDecoder } from 'node:util';
import { SaxesParser } from 'saxes';
import { Fault } from '#core/errors.ts';
import { broken, type ZipParts } from './unpack.ts';

/** What is met on a walk through XML; names come without their prefix. A walk ends early when `open` or `close` gives false. */
export interface XmlWalk {
  readonly open?: (name: string, attribute: (name: string) => string | undefined) => boolean | undefined;
  readonly close?: (name: string) => boolean | undefined;
  readonly text?: (text: string) => void;
}

/** Sheets nest six deep. */
const deepest = 100;
/** A cell holds 32,767 characters (a limit of spreadsheets); so much without one tag is no workbook. */
const longestSilence = 2 ** 20;

/**
 * Walks through a part of a workbook as it is unpacked. There is nothing in it that could lead elsewhere or grow: a document type, the
 * only place where entities are made, is refused as ECMA-376 part 2, 8.2.5 has it.
 *
 * @throws Fault workbook-not-readable
 */
export function walkXml(parts: ZipParts, name: string, walk: XmlWalk, tell: (packedBytes: number) => void = () => undefined): void {
  const parser = new SaxesParser({ xmlns: false, position: false });
  let depth = 0;
  let silence = 0;
  let goesOn = true;
  parser.on('error', () => {
    throw broken('its XML is damaged');
  });
  parser.on('doctype', () => {
    throw broken('its XML brings a document type, which workbooks may not');
  });
  parser.on('opentag', ({ name: tag, attributes }) => {
    silence = 0;
    depth += 1;
    if (depth > deepest) throw broken('its XML nests too deep');
    if (goesOn) goesOn = walk.open?.(plainName(tag), attribute => attributeOf(attributes, attribute)) ?? true;
  });
  parser.on('closetag', ({ name: tag }) => {
    silence = 0;
    depth -= 1;
    if (goesOn) goesOn = walk.close?.(plainName(tag)) ?? true;
  });
  const take = (text: string): void => {
    if (goesOn) walk.text?.(text);
  };
  parser.on('text', take);
  parser.on('cdata', take);
  let decoder: TextDecoder | undefined;
  const write = (bytes: Uint8Array, isLast: boolean): void => {
    decoder ??= decoderOf(bytes);
    const text = decoded(decoder, bytes, isLast);
    silence += text.length;
    parser.write(text);
    if (silence > longestSilence) throw new Fault('table-too-large', 'A text in the workbook is longer than a cell can be.');
  };
  parts.read(name, (bytes, packedBytes) => {
    for (let at = 0; at < bytes.length && goesOn; at += pieceBytes) write(bytes.subarray(at, at + pieceBytes), false);
    tell(packedBytes);
    return goesOn;
  });
  if (!goesOn) return;
  write(new Uint8Array(), true);
  parser.close();
}

/** Bytes that are parsed at once: what unpacks to much is not held as one text. */
const pieceBytes = 64 * 1024;

/** ECMA-376 part 2, 8.2.5: UTF-8 or UTF-16. */
function decoderOf(bytes: Uint8Array): TextDecoder {
  const label = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(label, { fatal: true });
}

function decoded(decoder: TextDecoder, bytes: Uint8Array, isLast: boolean): string {
  try {
    return decoder.decode(bytes, { stream: !isLast });
  } catch {
    throw broken('its XML is not in the encoding that it says');
  }
}

function plainName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** By its name, with whatever prefix: `r:id` is `id`. */
function attributeOf(attributes: Readonly<Record<string, string>>, name: string): string | undefined {
  if (Object.hasOwn(attributes, name)) return attributes[name];
  const key = Object.keys(attributes).find(one => one.endsWith(`:${name}`));
  return key === undefined ? undefined : attributes[key];
}
