import type { LabResult } from '#core/client/assessment/assessment.ts';
import { loincCode } from '#core/client/fhir/loinc.ts';
import { type Analyte, analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { collectLabs, drawnFromWords, type LabIssue, type LabIssueCode, readLabResult } from '#core/client/labs/readLabResult.ts';
import { Fault, type Issue, type Reading } from '#core/errors.ts';
import type { Table, TableIssueCode, TableRow } from './ports.ts';

const headings = ['analyte', 'loinc', 'value', 'unit', 'date', 'time', 'lowerNormal', 'upperNormal', 'drawn', 'hemolyzed'] as const;
type Heading = (typeof headings)[number];
type Columns = ReadonlyMap<Heading, { readonly at: number; readonly heading: string }>;

/** Short names of the trade beside the keys and names of the analytes. Urea is none: in mg/dL it is not urea nitrogen. */
const otherNames: ReadonlyMap<string, Analyte> = new Map([
  ['bun', 'ureaNitrogen'],
  ['crp', 'cReactiveProtein'],
  ['tsat', 'transferrinSaturation'],
  ['urr', 'ureaReduction'],
]);

/**
 * Laboratory results from a table, one a row, as docs/formats.md describes it. A row without a unit or with an unknown name or code is left
 * out and named; nothing is guessed.
 *
 * @throws Fault table-heading-missing, table-heading-twice.
 */
export function labsFromCsv(table: Table): Reading<readonly LabResult[], LabIssueCode | TableIssueCode | 'column-not-known'> {
  const { columns, unknown } = columnsOf(table.headings);
  const read = collectLabs(table.rows.map(row => ({ read: readRow(row, columns), place: { row: row.row } })));
  return { value: read.value, issues: [...table.issues, ...unknown, ...read.issues] };
}

function readRow({ row, cells }: TableRow, columns: Columns): LabResult | LabIssue {
  const cell = (heading: Heading) => (cells[columns.get(heading)?.at ?? -1] ?? '').trim();
  const placeOf = (heading: Heading) => ({ row, heading: columns.get(heading)?.heading ?? heading });
  const issue = (code: LabIssueCode, heading: Heading, found: string, expected: string): LabIssue => ({
    code,
    place: placeOf(heading),
    found: found === '' ? 'an empty cell' : found,
    expected: `${expected}; the row is left out`,
  });

  const byCode = cell('loinc') === '' ? undefined : loincCode(cell('loinc'));
  const byName = cell('analyte') === '' ? undefined : analyteNamed(cell('analyte'));
  if (cell('loinc') !== '' && byCode === undefined)
    return issue('lab-analyte-not-known', 'loinc', cell('loinc'), 'a LOINC code of docs/formats.md');
  if (cell('analyte') !== '' && byName === undefined)
    return issue('lab-analyte-not-known', 'analyte', cell('analyte'), 'a name of docs/formats.md');
  const analyte = byCode?.analyte ?? byName;
  const named: Heading = columns.has('analyte') ? 'analyte' : 'loinc';
  if (analyte === undefined) return issue('lab-analyte-not-known', named, '', 'an analyte or a LOINC code');
  if (byName !== undefined && byName !== analyte) {
    return issue(
      'lab-analyte-not-known',
      'analyte',
      `${cell('analyte')} beside ${cell('loinc')}`,
      `one analyte: ${cell('loinc')} is ${analyteFacts(analyte).name}`,
    );
  }
  const value = numberOf(cell('value'));
  if (value === undefined) return issue('lab-value-not-a-number', 'value', cell('value'), 'digits with a decimal point');
  const upperNormal = cell('upperNormal') === '' ? undefined : numberOf(cell('upperNormal'));
  if (cell('upperNormal') !== '' && upperNormal === undefined) {
    return issue('lab-upper-normal-not-read', 'upperNormal', cell('upperNormal'), 'digits with a decimal point');
  }
  const lowerNormal = cell('lowerNormal') === '' ? undefined : numberOf(cell('lowerNormal'));
  if (cell('lowerNormal') !== '' && lowerNormal === undefined) {
    return issue('lab-upper-normal-not-read', 'lowerNormal', cell('lowerNormal'), 'digits with a decimal point');
  }
  const drawn = drawnFromWords(cell('drawn'));
  if (cell('drawn') !== '' && drawn === undefined)
    return issue('lab-drawn-in-conflict', 'drawn', cell('drawn'), 'pre, before dialysis, post or after dialysis');
  if (drawn !== undefined && byCode?.drawn !== undefined && drawn !== byCode.drawn)
    return issue(
      'lab-drawn-in-conflict',
      'drawn',
      `${cell('drawn')} beside ${cell('loinc')}`,
      `one of the two: ${cell('loinc')} is ${byCode.drawn}`,
    );
  const marked = drawn ?? byCode?.drawn;
  const hemolyzed = cell('hemolyzed').toLowerCase();
  if (!['', 'yes', 'no'].includes(hemolyzed)) return issue('lab-entry-not-read', 'hemolyzed', hemolyzed, 'yes, no or nothing');
  return readLabResult(
    {
      analyte,
      value,
      unit: cell('unit'),
      day: cell('date'),
      ...(cell('time') === '' ? {} : { time: cell('time') }),
      ...(lowerNormal === undefined ? {} : { lowerNormal }),
      ...(upperNormal === undefined ? {} : { upperNormal }),
      ...(marked === undefined ? {} : { drawn: marked }),
      hemolyzed: hemolyzed === 'yes',
      ...(byCode === undefined ? {} : { units: byCode.units }),
    },
    { row },
  );
}

function columnsOf(printed: readonly string[]): { columns: Columns; unknown: Issue<'column-not-known'>[] } {
  const columns = new Map<Heading, { at: number; heading: string }>();
  const unknown: Issue<'column-not-known'>[] = [];
  for (const [at, heading] of printed.entries()) {
    if (heading.trim() === '') continue;
    const means = bare(heading) === 'timing' ? 'drawn' : headings.find(one => bare(one) === bare(heading));
    if (means === undefined) {
      const expected = 'a heading of docs/formats.md; the column is left alone';
      unknown.push({ code: 'column-not-known', place: { heading }, found: heading, expected });
    } else if (columns.has(means)) {
      throw new Fault('table-heading-twice', `Columns "${columns.get(means)?.heading}" and "${heading}" are both ${means}.`);
    } else columns.set(means, { at, heading });
  }
  const missing = (['value', 'unit', 'date'] as const).find(heading => !columns.has(heading));
  if (missing !== undefined) throw new Fault('table-heading-missing', `There is no column "${missing}".`);
  if (!columns.has('analyte') && !columns.has('loinc'))
    throw new Fault('table-heading-missing', 'There is no column "analyte" or "loinc".');
  return { columns, unknown };
}

function analyteNamed(words: string): Analyte | undefined {
  return analyteKeys.find(key => bare(key) === bare(words) || bare(analyteFacts(key).name) === bare(words)) ?? otherNames.get(bare(words));
}

/** "5.2"; nothing else: a comma may part thousands or decimals, and "<5" is no figure. */
function numberOf(words: string): number | undefined {
  return /^\d+(\.\d+)?$/u.test(words) ? Number(words) : undefined;
}

function bare(words: string): string {
  return words.toLowerCase().replace(/[\s_\-()]/gu, '');
}
