import { dirname, join } from 'node:path';
import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import type { Arguments, World } from './command.ts';
import { type Kind, readBuiltInOrFile } from './readBuiltInOrFile.ts';

export const plates: Kind<(typeof builtInPlates)[number]> = {
  noun: 'plate',
  builtIn: builtInPlates,
  fromJson: plateFromJson,
  notFound: 'plate-not-found',
  notValid: 'plate-not-valid',
};

export const yardsticks: Kind<(typeof builtInYardsticks)[number]> = {
  noun: 'yardstick',
  builtIn: builtInYardsticks,
  fromJson: yardstickFromJson,
  notFound: 'yardstick-not-found',
  notValid: 'yardstick-not-valid',
};

/** The folder of an option; where it is missing, that of the file which names a plate or a yardstick. */
export function folderOf(given: Arguments, option: 'plates' | 'yardsticks', file: string): string {
  const folder = given.options[option];
  return typeof folder === 'string' ? folder : dirname(file);
}

/** A built-in one by its id, or ID.json of a folder; an id never leads out of the folder. */
export async function readNamed<Thing extends { readonly id: string }>(
  kind: Kind<Thing>,
  id: string,
  folder: string,
  world: World,
): Promise<Thing> {
  if (kind.builtIn.some(one => one.id === id)) return readBuiltInOrFile(kind, id, world);
  if (!/^[\p{L}\p{N}][\p{L}\p{N} ._-]*$/u.test(id)) throw new Fault(kind.notFound, `"${id}" is no id of a ${kind.noun}.`);
  return readBuiltInOrFile(kind, join(folder, `${id}.json`), world);
}
