import { Fault } from '#core/errors.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { readLabelToJson } from '#core/label/readLabelToJson.ts';
import { answerLines, idOf, type JsonObject } from '../answerLines.ts';
import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'label',
  usage: 'label --jsonl < labels.jsonl',
  summary: 'Reads labels, one JSON object a line: every figure with its range, and what the audit noticed.',
  options: { jsonl: { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    if (given.options.jsonl !== true) throw new Fault('option-missing', 'The option --jsonl is missing.');
    await answerLines(world, answerLabel);
  },
};

function answerLabel(value: JsonObject): JsonObject {
  const { value: printed, issues } = labelFromJson(value);
  if (printed === undefined) return { id: idOf(value), issues };
  const read = readLabel(printed);
  return readLabelToJson({ ...read, issues: [...issues, ...read.issues] });
}
