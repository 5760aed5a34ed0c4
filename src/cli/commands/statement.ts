import { isDamaged } from '#app/damagedText.ts';
import { findAdditives } from '#core/additive/findAdditives.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { intervalToJson } from '#core/quantity/interval.ts';
import { ceilTo, floorTo } from '#core/quantity/rounding.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import type { Ingredient, StatementIssueCode } from '#core/statement/statement.ts';
import { additiveToJson } from '../additiveToJson.ts';
import { answerLines, idOf, type JsonObject } from '../answerLines.ts';
import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'statement',
  usage: 'statement --jsonl < statements.jsonl',
  summary: 'Reads ingredient statements, one JSON object a line: ingredients as a tree, and the additives in them.',
  options: { jsonl: { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    if (given.options.jsonl !== true) throw new Fault('option-missing', 'The option --jsonl is missing.');
    await answerLines(world, answerStatement);
  },
};

function answerStatement(value: JsonObject, line: number): JsonObject {
  const id = idOf(value);
  if (typeof value.statement !== 'string') {
    const found = value.statement === undefined ? 'no key "statement"' : `"statement" is a ${typeof value.statement}`;
    return { id, issues: [{ code: 'statement-not-text', place: { line }, found, expected: 'the statement as text' }] };
  }
  const { value: read, issues } = parseStatement(value.statement);
  return {
    id,
    ingredients: read.ingredients.map(ingredientToJson),
    additives: findAdditives(read).map(additiveToJson),
    issues: issues.some(({ code }) => code === 'text-damaged') || !isDamaged(value.statement) ? issues : [damagedIssue(line), ...issues],
  };
}

function ingredientToJson(node: Ingredient): JsonObject {
  return {
    kind: node.kind,
    name: node.name,
    start: node.start,
    end: node.end,
    presence: node.presence,
    organic: node.organic,
    notes: node.notes,
    declaredPercent: node.declaredPercent,
    atMostPercent: node.atMostPercent,
    sharePercent: intervalToJson({ lo: floorTo(node.sharePercent.lo, 2), hi: ceilTo(node.sharePercent.hi, 2) }),
    parts: node.parts.map(ingredientToJson),
  };
}

function damagedIssue(line: number): Issue<StatementIssueCode> {
  const found = 'control characters or halves of a character';
  return { code: 'text-damaged', place: { line }, found, expected: 'text as printed on the package' };
}
