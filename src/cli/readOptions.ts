import { parseArgs } from 'node:util';
import { Fault } from '#core/errors.ts';
import type { Arguments, Command } from './command.ts';

/** @throws Fault unknown-option for an option that the command does not have, or one without its value. */
export function readOptions(command: Command, args: readonly string[]): Arguments {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: command.options, allowPositionals: true, strict: true });
    return { options: values as Arguments['options'], positionals };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new Fault('unknown-option', `${error.message.split('. ')[0]}. Usage: platewright ${command.usage}`);
  }
}

/** @throws Fault option-missing, unknown-option when the value is none of `allowed`. */
export function oneOf<Value extends string>(given: Arguments, option: string, allowed: readonly Value[]): Value {
  const value = given.options[option] ?? allowed[0]!;
  const found = allowed.find(one => one === value);
  if (found === undefined) throw new Fault('unknown-option', `--${option} "${value}" is none of: ${allowed.join(', ')}.`);
  return found;
}

/** Words with commas between, each once. @throws Fault unknown-option when one is none of `allowed`. */
export function severalOf<Value extends string>(given: Arguments, option: string, allowed: readonly Value[]): readonly Value[] {
  const value = given.options[option];
  if (typeof value !== 'string') return [];
  const found = value.split(',').map(word => {
    const one = allowed.find(known => known === word.trim());
    if (one === undefined) throw new Fault('unknown-option', `--${option} "${word.trim()}" is none of: ${allowed.join(', ')}.`);
    return one;
  });
  return [...new Set(found)];
}

/** @throws Fault option-missing. */
export function needed(given: Arguments, option: string): string {
  const value = given.options[option];
  if (typeof value !== 'string' || value === '') throw new Fault('option-missing', `The option --${option} is missing.`);
  return value;
}

/** @throws Fault unknown-option when more words were given than the command takes. */
export function atMostPositionals(given: Arguments, most: number): void {
  const odd = given.positionals[most];
  if (odd !== undefined) throw new Fault('unknown-option', `"${odd}" is one word too many.`);
}
