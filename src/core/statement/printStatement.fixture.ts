import { groupKind } from './reading/headings.ts';
import type { Ingredient, Presence, Statement } from './statement.ts';
import { tokenize } from './text/tokenize.ts';

/**
 * Prints a tree in one canonical form: round brackets, commas, one "contains N% or less of" clause at the end of a
 * level. Reading what was printed gives the same tree again (positions aside), so a statement can be compared,
 * stored and shown without its typing accidents.
 */
export function printStatement(statement: Pick<Statement, 'ingredients' | 'remarks'>): string {
  const sentences = [printList(statement.ingredients)];
  for (const remark of statement.remarks) sentences.push(remark.kind === 'footnote' ? `*${remark.text}` : remark.text);
  const text = sentences.filter(sentence => sentence !== '').join('. ');
  return text === '' ? '' : `${text}.`;
}

function printList(items: readonly Ingredient[]): string {
  const loose: Ingredient[] = [];
  const components: Ingredient[] = [];
  for (const item of items) (item.kind === 'component' ? components : loose).push(item);
  const runs: string[] = [];
  const tail = sharedTail(loose);
  const ordered = loose.slice(0, loose.length - tail);
  printRuns(ordered, runs, true, tail > 0);
  if (tail > 0) {
    const members: string[] = [];
    printRuns(loose.slice(ordered.length), members, false, false);
    runs.push(`contains ${loose.at(-1)!.atMostPercent}% or less of: ${members.join(', ')}`);
  }
  // A list that ends in "x and y" as one name gets a comma behind it: only the last item of a list is split at "and".
  const main = runs.join(', ') + (/ (?:and|&) /i.test(loose.at(-1)?.name ?? '') ? ',' : '');
  const rest = components.map(component => `${componentHead(component.name)}: ${printParts(component.parts)}`);
  return [main, ...rest].filter(sentence => sentence !== '').join('. ');
}

function componentHead(name: string): string {
  const words = tokenize(name).tokens;
  return words.length > 0 && groupKind(words) !== undefined ? `${name} ingredients` : name;
}

function printParts(parts: readonly Ingredient[]): string {
  const printed = printList(parts);
  return parts.some(part => part.kind === 'component') ? `(${printed})` : printed;
}

/** How many items at the end of the level share one threshold; the clause may head only the last run of a level. */
function sharedTail(items: readonly Ingredient[]): number {
  const limit = items.at(-1)?.atMostPercent;
  if (limit === undefined) return 0;
  let count = 0;
  while (count < items.length && items[items.length - 1 - count]!.atMostPercent === limit) count += 1;
  return count;
}

/** The scope of "may contain" and "one or more of" ends with a sentence, so what follows starts a new one. */
function printRuns(items: readonly Ingredient[], runs: string[], withLimits: boolean, isFollowed: boolean): void {
  for (let from = 0; from < items.length; ) {
    const presence = items[from]!.presence;
    let to = from + 1;
    while (to < items.length && items[to]!.presence === presence) to += 1;
    const printed = items
      .slice(from, to)
      .map(item => printItem(item, withLimits))
      .join(', ');
    runs.push(`${opening(presence)}${printed}${presence !== 'certain' && (isFollowed || to < items.length) ? '.' : ''}`);
    from = to;
  }
}

function opening(presence: Presence): string {
  if (presence === 'may-contain') return 'may contain: ';
  return presence === 'alternative' ? 'one or more of: ' : '';
}

function printItem(item: Ingredient, withLimit: boolean): string {
  // A solution heads its list up to the next semicolon.
  if (item.kind === 'group' && solutionName.test(item.name)) return `contains ${item.name} of (${printList(item.parts)});`;
  const head = isChoice(item) ? printChoice(item) : `${item.organic ? 'organic ' : ''}${item.name}`;
  const brackets: string[] = [];
  if (item.declaredPercent !== undefined) brackets.push(`${item.declaredPercent}%`);
  if (withLimit && item.atMostPercent !== undefined) brackets.push(`less than ${item.atMostPercent}%`);
  brackets.push(...item.notes);
  if (item.parts.length > 0 && !isChoice(item)) brackets.push(printList(item.parts));
  return [head, ...brackets.map(bracket => `(${bracket})`)].join(' ');
}

const joints = /\s*\b(and\/or|or\/and|or)\b\s*/i;

const solutionName = /^up to [\d.]+% of a solution$/;

/** "canola and/or palm oil": the name holds its alternatives, which stand below it as parts. */
function isChoice(item: Ingredient): boolean {
  return (
    item.kind === 'group' && item.parts.length > 1 && joints.test(item.name) && item.parts.every(part => part.presence === 'alternative')
  );
}

function printChoice(item: Ingredient): string {
  const words = item.name.split(joints).filter((_, index) => index % 2 === 1);
  return item.parts
    .map((part, index) => `${printItem(part, true)}${index < item.parts.length - 1 ? ` ${words[index] ?? 'or'} ` : ''}`)
    .join('');
}
