import { Fault, type FaultCode, type Reading } from '#core/errors.ts';
import type { World } from './command.ts';
import { reportText } from './reportText.ts';

/** What a person may name on the command line: a plate or a yardstick. */
export interface Kind<Thing> {
  readonly noun: string;
  readonly builtIn: readonly Thing[];
  readonly fromJson: (value: unknown) => Reading<Thing | undefined>;
  readonly notFound: FaultCode;
  readonly notValid: FaultCode;
}

/**
 * The built-in one of this id, or what a JSON file holds. Notices about the file go to the report.
 *
 * @throws Fault of the kind's own codes; file-not-readable, file-too-large.
 */
export async function readBuiltInOrFile<Thing extends { readonly id: string }>(
  kind: Kind<Thing>,
  given: string,
  world: World,
): Promise<Thing> {
  const builtIn = kind.builtIn.find(({ id }) => id === given);
  if (builtIn !== undefined) return builtIn;
  const { value, issues } = kind.fromJson(await readJson(kind, given, world));
  const report = reportText(issues);
  if (value === undefined) throw new Fault(kind.notValid, `"${given}":\n${report.trimEnd()}`);
  world.say(report);
  return value;
}

async function readJson<Thing extends { readonly id: string }>(kind: Kind<Thing>, path: string, world: World): Promise<unknown> {
  try {
    return await readJsonFile(path, kind.notValid, world);
  } catch (error) {
    if (!(error instanceof Fault) || error.code !== 'file-not-found') throw error;
    const ids = kind.builtIn.map(({ id }) => id).join(', ');
    throw new Fault(kind.notFound, `"${path}" is neither a file nor a built-in ${kind.noun}. Built in: ${ids}.`);
  }
}

/** @throws Fault `notValid` for what is not JSON in UTF-8; file-not-found, file-not-readable, file-too-large. */
export async function readJsonFile(path: string, notValid: FaultCode, world: World): Promise<unknown> {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(await world.readBytes(path)));
  } catch (error) {
    if (error instanceof SyntaxError) throw new Fault(notValid, `"${path}" is not JSON: ${error.message}.`);
    if (error instanceof TypeError) throw new Fault(notValid, `"${path}" is not UTF-8 text.`);
    throw error;
  }
}
