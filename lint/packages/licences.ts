import parse, { type Info } from 'spdx-expression-parse';

/** SPDX ids under which the program may be used, changed and given on by anyone. */
const allowed = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
  'Zlib',
]);

/** A package whose package.json does not say its licence in SPDX's words. */
export interface LicenceByName {
  /** The SPDX id it stands under, undefined where nobody has granted one. */
  readonly licence?: string;
  readonly why: string;
}

/** By name and version: another version is looked at anew. */
export const licencesByName: Readonly<Record<string, LicenceByName>> = {};

/** Whether one may choose, out of what an SPDX expression offers, a licence of the list. Undefined when it is no SPDX expression. */
export function isAllowed(expression: string): boolean | undefined {
  try {
    return allows(parse(expression));
  } catch {
    return undefined;
  }
}

function allows(info: Info): boolean {
  if ('license' in info) return allowed.has(info.license);
  return info.conjunction === 'or' ? allows(info.left) || allows(info.right) : allows(info.left) && allows(info.right);
}
