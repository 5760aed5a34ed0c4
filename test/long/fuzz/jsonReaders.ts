/** The codecs of what is kept and sent as JSON. What a codec lets in is also worked with, as the next step would. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readManifest } from '#adapters/archive/manifest.ts';
import { rowsOfWorkspaceFile } from '#adapters/archive/workspaceFile.ts';
import { copyFromJson, copyToJson } from '#adapters/clients/sealedCopy.ts';
import { damagedColumns, rowOfArchive } from '#adapters/storage/checkRow.ts';
import { assessmentFromJson, resultsFromJson } from '#core/client/assessment/assessmentJson.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { labsFromFhir } from '#core/client/fhir/labsFromFhir.ts';
import { proposalToJson } from '#core/client/prescription/proposalToJson.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { clientRecordFromJson, clientRecordToJson } from '#core/client/record/clientRecordJson.ts';
import { prescriptionFromJson, prescriptionToJson } from '#core/client/record/prescription.ts';
import { keptCareRulesFromJson, keptCareRulesToJson } from '#core/client/rules/keptCareRules.ts';
import type { Reading } from '#core/errors.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import { clientHandoutFromJson, handoutFromJson } from '#core/handout/handoutFromJson.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { readLabelToJson } from '#core/label/readLabelToJson.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { plateToJson } from '#core/plate/plateToJson.ts';
import { estimateFromJson } from '#core/recipe/estimateJson.ts';
import { referenceFileFromJson } from '#core/reference/referenceFile.ts';
import { savedSurveyFromJson, savedSurveyToJson } from '#core/yardstick/savedSurvey.ts';
import { yardstickFromJson, yardstickToJson } from '#core/yardstick/yardstickFromJson.ts';
import type { Chance } from './chance.ts';
import { mutateJson, writeJson } from './mutateJson.ts';
import type { Reader } from './reader.ts';

const source = join(import.meta.dirname, '../../../src');
const jsonOf = (path: string): unknown => JSON.parse(readFileSync(join(source, path), 'utf8'));
/** Files of each form of a kept thing, beside its codec. */
export const formsOf = (kind: string): readonly unknown[] =>
  globSync(`core/**/forms/${kind}.form*.json`, { cwd: source }).sort().map(jsonOf);

const labels = formsOf('label');
const records = formsOf('clientRecord');
const partsOf = (key: string): readonly unknown[] =>
  records.flatMap(record => (isRecord(record) && Array.isArray(record[key]) ? record[key] : []));
export const assessments = partsOf('assessments').flatMap(one => (isRecord(one) ? [one.assessment] : []));
const prescriptions = partsOf('prescriptions');
const workspaceFiles = [3, 4, 5].map(form => jsonOf(`adapters/storage/migrations/fixtures/workspace-v${form}.json`));
const rowsOfFiles = workspaceFiles.flatMap(file =>
  isRecord(file) && isRecord(file.tables)
    ? Object.entries(file.tables).flatMap(([table, rows]) => (Array.isArray(rows) ? rows.slice(0, 20).map(row => ({ table, row })) : []))
    : [],
);
const manifest = {
  platewrightArchive: 1,
  madeAt: '2026-06-15T12:00:00.000Z',
  version: '0.1.0',
  rows: { foods: 2, labels: 3 },
  clients: { records: 1, opensWith: 'passphrase' },
  files: [{ name: 'tables/foods.jsonl', bytes: 12, sha256: 'a'.repeat(64) }],
};
const copy = {
  format: 2,
  wraps: [{ id: '1', kind: 'passphrase', form: 2, n: 1024, r: 8, p: 1, salt: 'AAAAAAAAAAAAAAAAAAAAAA==', sealedSecret: 'AAAA' }],
  index: 'AAAA',
  rows: [{ row: 'AA==', body: 'AAAA' }],
};
const references = [
  {
    platewrightReference: 1,
    nutrients: [],
    tables: [
      { dataset: 'usda-sr', source: 'USDA SR', edition: '28', foods: [['11241', 'Kohlrabi, raw', '1100', [46, null], [['1 cup', 135]]]] },
    ],
  },
];
const observation = {
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '2823-3' }] },
  subject: { reference: 'Patient/1' },
  effectiveDateTime: '2026-06-05T07:30:00Z',
  valueQuantity: { value: 5.2, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' },
  referenceRange: [{ low: { value: 3.5 }, high: { value: 5.1 } }],
};
const bundles = [observation, [observation, observation], { resourceType: 'Bundle', entry: [{ resource: observation }] }];

/** `work` goes on with what a codec read, and writes it again. */
function codec<Value>(
  name: string,
  share: number,
  seeds: readonly unknown[],
  read: (json: unknown) => Reading<Value | undefined>,
  work: (value: Value) => unknown = () => undefined,
): Reader {
  return json(name, share, seeds, given => {
    const { value } = read(given);
    if (value !== undefined) JSON.stringify(work(value));
  });
}

function json(name: string, share: number, seeds: readonly unknown[], read: (json: unknown, text: string) => unknown): Reader {
  return {
    name,
    share,
    read: (chance, say) => {
      const text = writeJson(chance, mutated(chance, seeds));
      say(text);
      const [isJson, given] = parsed(text);
      return isJson ? read(given, text) : undefined;
    },
  };
}

function text(name: string, share: number, seeds: readonly unknown[], read: (text: string) => unknown): Reader {
  return {
    name,
    share,
    read: (chance, say) => {
      const written = writeJson(chance, mutated(chance, seeds));
      say(written);
      return read(written);
    },
  };
}

function mutated(chance: Chance, seeds: readonly unknown[]): unknown {
  return mutateJson(chance, chance.of(seeds));
}

function parsed(given: string): [boolean, unknown] {
  try {
    return [true, JSON.parse(given)];
  } catch {
    return [false, undefined];
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const day = '2026-06-15';

export const jsonReaders: readonly Reader[] = [
  codec('label', 10, labels, labelFromJson, label => readLabelToJson(readLabel(label))),
  codec('plate', 5, formsOf('plate'), plateFromJson, plateToJson),
  codec('yardstick', 5, formsOf('yardstick'), yardstickFromJson, yardstickToJson),
  codec('saved survey', 4, formsOf('savedSurvey'), savedSurveyFromJson, savedSurveyToJson),
  codec('guide', 5, formsOf('guide'), guideFromJson),
  codec('handout', 5, formsOf('handout'), handoutFromJson),
  codec('client handout', 3, formsOf('handout'), clientHandoutFromJson),
  codec('client record', 5, records, clientRecordFromJson, clientRecordToJson),
  codec('assessment', 8, assessments, assessmentFromJson, assessment => {
    checkAssessment(assessment, day);
    return proposalToJson(proposePrescription(assessment, day));
  }),
  codec('results', 3, assessments, resultsFromJson),
  codec('prescription', 5, prescriptions, prescriptionFromJson, prescriptionToJson),
  codec('clinic figures', 4, formsOf('clinicFigures'), keptCareRulesFromJson, keptCareRulesToJson),
  json('FHIR results', 5, bundles, labsFromFhir),
  json('mineral estimate', 2, [{ kind: 'none' }, ...labels], estimateFromJson),
  json('copy of the clients', 5, [copy, { ...copy, wraps: [], key: Buffer.alloc(64).toString('base64') }], given =>
    copyToJson(copyFromJson(given)),
  ),
  text('manifest', 5, [manifest], readManifest),
  text('reference file', 3, references, given => referenceFileFromJson(given, 'a.json')),
  text('workspace file', 2, workspaceFiles, async given => {
    for await (const row of rowsOfWorkspaceFile(piecesOf(given))) damagedColumns(row.table, rowOfArchive(row));
  }),
  json('row of an archive', 8, rowsOfFiles, given => {
    if (!isRecord(given) || typeof given.table !== 'string' || !isRecord(given.row)) return;
    const row = { table: given.table, row: given.row };
    damagedColumns(row.table, rowOfArchive(row));
  }),
];

/** As a file comes in: cut anywhere. */
async function* piecesOf(text: string): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let from = 0; from < bytes.length; from += 97) yield bytes.subarray(from, from + 97);
}
