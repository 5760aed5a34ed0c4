import { type Formula, formulaSubjects } from '#core/client/formulas/catalog/formula.ts';
import type { FormulaResult } from '#core/client/formulas/catalog/formulaResult.ts';
import { formulaToJson } from '#core/client/formulas/catalog/formulaToJson.ts';
import { hanging, padEnd, wrap } from './layOut.ts';

const indent = '    ';

/** Names and titles, a line each, by subject. */
export function listText(formulas: readonly Formula[], width: number): string {
  const longest = Math.max(...formulas.map(({ name }) => name.length));
  const blocks = formulaSubjects.map(subject => [
    subject,
    ...formulas
      .filter(one => one.subject === subject)
      .flatMap(({ name, title }) =>
        width < longest + 30 ? [`  ${name}`, ...wrap(title, width, indent)] : hangAt(`  ${padEnd(name, longest)}  `, title, width),
      ),
  ]);
  return blocks.map(lines => `${lines.join('\n')}\n`).join('\n');
}

/** Everything there is to know of a formula before it is used. */
export function describedText(formula: Formula, width: number): string {
  const { name, title, purpose, inputs, example, sources, cautions } = formulaToJson(formula);
  const given = Object.entries(example.inputs).map(([input, value]) => `${input}=${asTyped(value)}`);
  const expected = example.results.map(({ label, text }) => `${label} ${text}`);
  const lines = [
    name,
    ...wrap(`${title}. ${purpose}`, width, indent),
    ...inputs.flatMap(input => hanging(`${input.name}:`, inputWords(input), width, indent)),
    ...formula.formula.flatMap(line => hanging('Formula:', line, width, indent)),
    ...hanging('Example:', `platewright formula ${name} ${given.join(' ')}`, width, indent),
    ...hanging('Gives:', `${expected.join('; ')} (${example.source})`, width, indent),
    ...toldWith(sources, cautions, width),
  ];
  return `${lines.join('\n')}\n`;
}

/** Without a blank where it is read without one, so that the line can be copied: 82kg, "5 ft 10 in". */
function asTyped(value: string): string {
  const joined = value.replace(/^([\d.]+) (\S+)$/, '$1$2');
  return /\s/.test(joined) ? `"${joined}"` : joined;
}

/** The result first, then where it comes from and when not to believe it. */
export function resultText(formula: Formula, result: FormulaResult, width: number): string {
  const { sources, cautions } = formulaToJson(formula);
  const lines = [
    ...wrap(formula.title, width),
    ...result.flatMap(({ label, text }) => hanging(`${label}:`, text, width, indent)),
    ...toldWith(sources, cautions, width),
  ];
  return `${lines.join('\n')}\n`;
}

function toldWith(sources: readonly string[], cautions: readonly string[], width: number): readonly string[] {
  return [
    ...sources.flatMap(source => hanging('Source:', source, width, indent)),
    ...[...cautions, 'Local protocol and clinical judgment come first.'].flatMap(caution => hanging('Caution:', caution, width, indent)),
  ];
}

/** "weight, in kg (20 to 400 kg) or lb (44.1 to 881.8 lb)". */
function inputWords({ label, required, help, units, options }: ReturnType<typeof formulaToJson>['inputs'][number]): string {
  const possible = units.map(({ possible: range }) => range).join(', or ');
  const choice = options.map(({ key }) => key).join(', ');
  return [
    `${label}${help === undefined ? '' : ` (${help})`}`,
    ...(possible === '' ? [] : [possible]),
    ...(choice === '' ? [] : [`one of ${choice}`]),
    ...(required ? [] : ['may be left out']),
  ].join('; ');
}

function hangAt(head: string, text: string, width: number): string[] {
  return wrap(text, width - head.length).map((line, at) => (at === 0 ? head : ' '.repeat(head.length)) + line);
}
