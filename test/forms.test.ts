import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { clientDraftsFromJson } from '#core/client/record/clientDrafts.ts';
import { clientRecordFromJson } from '#core/client/record/clientRecordJson.ts';
import { keptCareRulesFromJson } from '#core/client/rules/keptCareRules.ts';
import type { Reading } from '#core/errors.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import { handoutFromJson } from '#core/handout/handoutFromJson.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { savedSurveyFromJson } from '#core/yardstick/savedSurvey.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';

const root = fileURLToPath(new URL('../src/core', import.meta.url));

/** Each thing that is kept, with its codec; `NAME.formN.json` beside the codec is a file of its form N. */
const codecs: Readonly<Record<string, (json: unknown) => Reading<unknown>>> = {
  label: labelFromJson,
  plate: plateFromJson,
  yardstick: yardstickFromJson,
  savedSurvey: savedSurveyFromJson,
  guide: guideFromJson,
  handout: handoutFromJson,
  clientRecord: clientRecordFromJson,
  clientDrafts: clientDraftsFromJson,
  clinicFigures: keptCareRulesFromJson,
};

const files = globSync('**/forms/*.json', { cwd: root }).sort();
const read = (file: string): Record<string, unknown> => JSON.parse(readFileSync(`${root}/${file}`, 'utf8'));
const nameOf = (file: string): string => /([A-Za-z]+)\.form\d+\.json$/.exec(file)![1]!;
const kinds = Object.keys(codecs);
const newest = (kind: string): string => files.filter(file => nameOf(file) === kind).at(-1)!;

describe('the forms in which things are kept', () => {
  it('[FRM-1] every kind that is kept has a file of each of its forms', () => {
    expect([...new Set(files.map(nameOf))].sort()).toEqual([...kinds].sort());
  });

  it.each(files)('[FRM-1] %s is read without an issue', file => {
    const { value, issues } = codecs[nameOf(file)]!(read(file));
    expect(issues).toEqual([]);
    expect(value).toBeDefined();
  });

  it.each(kinds)('[FRM-2] a %s from a newer program is refused by name, not read by halves', kind => {
    const { value, issues } = codecs[kind]!({ ...read(newest(kind)), format: 99 });
    expect(value).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'json-format-not-known', place: { heading: 'format' }, found: '99' }]);
  });

  it.each(kinds)('[FRM-2] a form that is no number is none, for a %s too', kind => {
    for (const format of ['2', 0, -1, 1.5, null, [], {}, Number.NaN]) {
      const { value, issues } = codecs[kind]!({ ...read(newest(kind)), format });
      expect([format, value, issues.length]).toEqual([format, undefined, 1]);
    }
  });

  it.each(kinds)('[FRM-3] a damaged %s is refused with places, or read without what is damaged; nothing is thrown', kind => {
    const whole = read(newest(kind));
    const odd = [null, 7, 'x', [], [[]], {}, { __proto__: null }, true];
    for (const given of [...odd, ...Object.keys(whole).flatMap(key => odd.map(value => ({ ...whole, [key]: value })))]) {
      const { value, issues } = codecs[kind]!(given);
      expect(value !== undefined || issues.length > 0).toBe(true);
    }
  });

  it('[FRM-3] an assessment has no form of its own: it is kept inside a record, and a number of a form is a key nobody reads', () => {
    const [{ assessment }] = read(newest('clientRecord')).assessments as [{ assessment: Record<string, unknown> }];
    expect(assessmentFromJson(assessment).issues).toEqual([]);
    expect(assessmentFromJson({ ...assessment, format: 1 }).issues).toMatchObject([{ place: { heading: 'format' } }]);
  });

  it('[FRM-4] a handout of form 1 says the same as one of form 2', () => {
    const [one, two] = files.filter(file => nameOf(file) === 'handout').map(file => handoutFromJson(read(file)).value);
    expect(one).toEqual(two);
    expect(one?.prescription?.targets[0]?.range).toEqual({ lo: 0, hi: 2300 });
  });
});
