import type { LabResult } from '#core/client/assessment/assessment.ts';
import { loincCode } from '#core/client/fhir/loinc.ts';
import { analyteNamed, type NamedAnalyte } from '#core/client/labs/analyteNames.ts';
import { analyteFacts } from '#core/client/labs/analytes.ts';
import type { LabPerson } from '#core/client/labs/labPerson.ts';
import {
  collectLabs,
  drawnFromWords,
  isSameUnit,
  type LabIssue,
  type LabIssueCode,
  readLabResult,
} from '#core/client/labs/readLabResult.ts';
import type { Reading } from '#core/errors.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type DayOrder, dayOrderOf, readWrittenDay } from '#core/quantity/writtenDay.ts';
import type { Table, TableIssueCode } from '../ports.ts';
import { decimalMarkOf, withPoints } from './decimalMark.ts';
import { type LabCell, labCells, type WrittenPerson } from './labCells.ts';
import { figureOf, limitsOf } from './labFigures.ts';

export type LabTableIssueCode = LabIssueCode | TableIssueCode | 'column-not-known';

export interface LabsOfTable extends Reading<readonly LabResult[], LabTableIssueCode> {
  readonly person: LabPerson;
  /** How days of figures alone were read, where written the other way round they would be other days and nothing in the table shows which it is; with one of them. */
  readonly guessedOrder?: { readonly order: DayOrder; readonly example: string };
}

/**
 * Laboratory results from a table as laboratories write it: one result a row, days side by side, or analytes side by side, with columns in any order and rows of titles above them.
 * What has no unit, no known name, no figure or no day is left out and named. Of two people in one table nothing is read.
 *
 * @param today later days show in which order days are written
 * @param order asked of the person where the table does not show it; without, the month stands first
 * @throws Fault table-heading-missing, table-heading-twice.
 */
export function labsFromTable(table: Table, today: Day, order?: DayOrder): LabsOfTable {
  const { cells, people, issues } = labCells(table);
  if (people.length > 1) {
    const found = `results of ${people.length} people`;
    return {
      value: [],
      issues: [{ code: 'lab-more-than-one-client', place: {}, found, expected: 'the results of one client; nothing was read' }],
      person: {},
    };
  }
  const shown = dayOrderOf(
    cells.map(({ day }) => day),
    today,
  );
  const days = {
    order: order ?? (shown === 'day-first' ? shown : 'month-first'),
    isMixed: shown === 'mixed' && order === undefined,
    today,
  } as const;
  const mark = decimalMarkOf(cells);
  const read = collectLabs(cells.map(cell => ({ read: readCell(withPoints(cell, mark), days), place: cell.place })));
  const guessed = shown === undefined ? cells.find(({ day }) => readWrittenDay(day, days.order)?.isByOrder === true) : undefined;
  return {
    value: read.value,
    issues: [...table.issues, ...issues, ...read.issues],
    person: personOf(people[0], days.order),
    ...(guessed === undefined ? {} : { guessedOrder: { order: days.order, example: guessed.day } }),
  };
}

type Days = { readonly order: DayOrder; readonly isMixed: boolean; readonly today: Day };

/** In words, or by the letters of HL7 (table 0085). */
const notFinal = /prelim|pending|cancel|error|not final|incomplete|in process|^[DINOPRSWX]$/iu;

function readCell(cell: LabCell, days: Days): LabResult | LabIssue {
  const { place } = cell;
  const issue = (code: LabIssueCode, found: string, expected: string): LabIssue => ({
    code,
    place,
    found: found === '' ? 'an empty cell' : found,
    expected: `${expected}; the result is left out`,
  });
  const named = analyteOf(cell, issue);
  if ('code' in named) return named;
  const { analyte, units } = named;
  const { name } = analyteFacts(analyte);
  if (notFinal.test(cell.status)) return issue('lab-not-final', `${name}, ${cell.status}`, 'a final result');
  const figure = figureOf(cell.value);
  if (figure === undefined)
    return issue('lab-value-not-a-number', cell.value === '' ? '' : `${name} ${cell.value}`, 'one figure with a decimal point');
  if (cell.unit !== '' && figure.unit !== '' && !isSameUnit(cell.unit, figure.unit))
    return issue('lab-unit-not-known', `${name} in ${figure.unit} and in ${cell.unit}`, 'one unit');
  const day = readWrittenDay(cell.day, days.order);
  if (day === undefined) return issue('lab-day-not-read', cell.day === '' ? 'no day' : cell.day, 'the day of the sample');
  if (day.day > days.today) return issue('lab-day-not-read', cell.day, `a day that has been: this one would be ${day.day}`);
  if (day.isByOrder && days.isMixed)
    return issue('lab-day-not-read', cell.day, 'a day that is not two: this file has days with the month first and with the day first');
  const limits = limitsOf(cell);
  if (limits === undefined)
    return issue(
      'lab-upper-normal-not-read',
      [cell.lower, cell.upper].filter(Boolean).join(' and '),
      'limits in digits with a decimal point',
    );
  const drawn = drawnFromWords(cell.drawn);
  if (cell.drawn !== '' && drawn === undefined)
    return issue('lab-drawn-in-conflict', cell.drawn, 'pre, before dialysis, post or after dialysis');
  const marks = new Set([drawn, named.drawn].filter(one => one !== undefined));
  if (marks.size > 1) return issue('lab-drawn-in-conflict', `${cell.drawn} beside ${cell.code || cell.name}`, 'one of the two');
  const [mark] = marks;
  const hemolyzed = isHemolyzed(cell);
  if (hemolyzed === undefined) return issue('lab-entry-not-read', cell.hemolyzed, 'yes, no or nothing about hemolysis');
  const time = cell.time === '' ? day.time : readWrittenDay(`${day.day} ${cell.time}`, days.order)?.time;
  if (cell.time !== '' && time === undefined) return issue('lab-time-not-read', cell.time, 'a time as HH:MM');
  return readLabResult(
    {
      ...{ analyte, value: figure.value, unit: cell.unit || figure.unit, day: day.day, hemolyzed, ...limits },
      ...(time === undefined ? {} : { time }),
      ...(mark === undefined ? {} : { drawn: mark }),
      ...(units === undefined ? {} : { units }),
    },
    place,
  );
}

/** A sample that is none of blood, by its name or by that of the group of results that it stands under. */
const notBlood =
  /urin|orina|\bu\s?a\b|\bur?\b|\bu\s?24|\b24\s*-?\s*(?:h\b|hr|hour)|\bcath|mid-?stream|clean catch|\bspot\b|fluid|peritoneal|dialys|effluent|drain|dwell|\bpet\b|stool|feces|csf|saliva|sweat/iu;

type Told = (code: LabIssueCode, found: string, expected: string) => LabIssue;

/** By code, by name, or by both where they agree; of blood, unless the name says urine. */
function analyteOf({ code, name, specimen }: LabCell, issue: Told): (NamedAnalyte & { readonly units?: readonly string[] }) | LabIssue {
  const byCode = code === '' ? undefined : loincCode(code);
  const byName = name === '' ? undefined : analyteNamed(name);
  if (code !== '' && byCode === undefined) return issue('lab-analyte-not-known', code, 'a LOINC code of docs/formats.md');
  if (name !== '' && byName === undefined) return issue('lab-analyte-not-known', name, 'a result of docs/formats.md');
  const named = byCode ?? byName;
  if (named === undefined) return issue('lab-analyte-not-known', '', 'the name of a result, or a LOINC code');
  if (byName !== undefined && byName.analyte !== named.analyte)
    return issue('lab-analyte-not-known', `${name} beside ${code}`, `one result: ${code} is ${analyteFacts(named.analyte).name}`);
  if (byName?.drawn !== undefined && byCode?.drawn !== undefined && byName.drawn !== byCode.drawn)
    return issue('lab-drawn-in-conflict', `${name} beside ${code}`, 'one of the two');
  if (notBlood.test(specimen) && !named.analyte.startsWith('urine'))
    return issue('lab-analyte-not-known', `${name || code} of ${specimen}`, 'a result of the blood');
  const drawn = byCode?.drawn ?? byName?.drawn;
  return { analyte: named.analyte, ...(drawn === undefined ? {} : { drawn }), ...(byCode === undefined ? {} : { units: byCode.units }) };
}

/** By its own column, or by a remark of the laboratory; undefined for words that say neither. */
function isHemolyzed({ hemolyzed, remark }: LabCell): boolean | undefined {
  const said = hemolyzed.toLowerCase();
  const isSaidNot = /^(?:|-|n|no|none|nil|n\/a|na|neg(?:ative)?|absent|false|0|(?:non|not|un)[-\s]?(?:ha?emoly[sz]ed)?)$/u.test(said);
  const isSaid =
    /^(?:y|yes|pos(?:itive)?|present|true|\+{1,4}|[1-4]\+?|slight(?:ly)?|mild(?:ly)?|moderate(?:ly)?|gross(?:ly)?|marked(?:ly)?|trace)?[\s(]*(?:ha?emoly[sz](?:ed|is)|[1-4]\+)?\)?$/u.test(
      said,
    );
  if (!isSaidNot && !isSaid) return undefined;
  // What is said not to be is taken out; what is left may still say that it is.
  const left = remark
    .replace(
      /\b(?:no|not|non|without|negative for)[-\s]*(?:(?:visible|visibly|gross|grossly|significant|evidence of|signs? of)\s+)*h(?:a?e)mol[a-z]*/giu,
      ' ',
    )
    .replace(/h(?:a?e)molysis(?: index)?\s*[:=]?\s*(?:none|no|negative|absent|not (?:seen|detected|present)|0)\b(?!\.)/giu, ' ');
  return !isSaidNot || /h(?:a?e)mol[yi]|hem[oó]lisis|\blysed\b/iu.test(left);
}

function personOf(person: WrittenPerson | undefined, order: DayOrder): LabPerson {
  const bornOn = person?.born === undefined ? undefined : readWrittenDay(person.born, order)?.day;
  return { ...(person?.name === undefined ? {} : { name: person.name }), ...(bornOn === undefined ? {} : { bornOn }) };
}
