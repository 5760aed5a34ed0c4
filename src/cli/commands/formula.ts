import type { Formula } from '#core/client/formulas/catalog/formula.ts';
import { findFormula, formulaCatalog, runFormula } from '#core/client/formulas/catalog/formulaCatalog.ts';
import type { FormulaResult } from '#core/client/formulas/catalog/formulaResult.ts';
import { formulaToJson, resultToJson } from '#core/client/formulas/catalog/formulaToJson.ts';
import { Fault } from '#core/errors.ts';
import type { Command } from '../command.ts';
import { describedText, listText, resultText } from '../formulaText.ts';
import { reportText } from '../reportText.ts';

export const command: Command = {
  name: 'formula',
  usage: 'formula [NAME [INPUT=VALUE …]] [--json]',
  summary: 'Lists the formulas; shows one with its inputs, math, worked example and sources; works it out (weight="72 kg").',
  options: { json: { type: 'boolean' } },
  async run({ options, positionals: [name, ...pairs] }, world) {
    const asJson = options.json === true;
    const write = (json: unknown, text: string) => world.write(asJson ? `${JSON.stringify(json, undefined, 2)}\n` : text);
    if (name === undefined) return write(formulaCatalog.map(formulaToJson), listText(formulaCatalog, world.width));
    const formula = findFormula(name);
    if (formula === undefined) throw new Fault('formula-not-found', `There is no formula "${name}".`);
    if (pairs.length === 0) return write(formulaToJson(formula), describedText(formula, world.width));
    const result = workedOut(formula, inputsOf(pairs));
    const { title, sources, cautions } = formulaToJson(formula);
    return write({ name, title, results: resultToJson(result), sources, cautions }, resultText(formula, result, world.width));
  },
};

/** @throws Fault unknown-option for a word that names no input, or one that is named twice. */
function inputsOf(pairs: readonly string[]): Readonly<Record<string, string>> {
  const inputs = new Map<string, string>();
  for (const pair of pairs) {
    const at = pair.indexOf('=');
    if (at <= 0) throw new Fault('unknown-option', `"${pair}" is no input: write INPUT=VALUE, such as weight="72 kg".`);
    const name = pair.slice(0, at);
    if (inputs.has(name)) throw new Fault('unknown-option', `The input "${name}" is given twice.`);
    inputs.set(name, pair.slice(at + 1));
  }
  return Object.fromEntries(inputs);
}

/** @throws Fault formula-inputs-not-valid with every input that stands in the way. */
function workedOut({ name, title }: Formula, inputs: Readonly<Record<string, string>>): FormulaResult {
  const { value, issues } = runFormula(name, inputs);
  if (value === undefined) throw new Fault('formula-inputs-not-valid', `${title}:\n${reportText(issues).trimEnd()}`);
  return value;
}
