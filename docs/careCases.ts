import { answerTo, careCases, expectationWords, gotWords, missed } from '../test/careCases/careCase.ts';

/** docs/care-cases.md: each case written by hand from the sheets, what was expected with its source, and what the program says. */
export function careCasesPage(): string {
  const answered = careCases.map(one => ({ ...one, answer: answerTo(one) }));
  const kept = answered.filter(({ expect, answer }) => expect.every(one => missed(one, answer) === undefined)).length;
  const expectations = careCases.flatMap(({ expect }) => expect);
  const silences = expectations.filter(one => 'silent' in one || 'noCaution' in one || 'noCheck' in one).length;
  const rows = answered.map(({ id, what, source, expect, answer, note }) => [
    id,
    note === undefined ? what : `${what} (${note})`,
    expect.map(expectationWords).join('; '),
    source,
    expect.map(one => gotWords(one, answer)).join('; '),
  ]);
  const safe = rows.map(cells => cells.map(cell => cell.replaceAll('|', '\\|').replace(/\s+/g, ' ')));
  return `# Care cases

Made from \`test/careCases/cases.json\` by \`node docs/generate.ts\`; do not edit. Each case was worked out by hand from the clinical sheets, with its
arithmetic, before it was run. Words between slashes are patterns, so that wording may change and meaning may not. What is not as expected is bold.

${careCases.length} cases with ${expectations.length} expectations, ${silences} of them that something is not said; ${kept} cases are answered as expected.

${[['case', 'client', 'expected', 'source', 'got'], ['---', '---', '---', '---', '---'], ...safe].map(cells => `| ${cells.join(' | ')} |`).join('\n')}
`;
}
