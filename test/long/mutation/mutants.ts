/** Small mistakes that could stand in a source. Words of a text are none: other tests hold them, and the compiler most of the rest. */
import { type Node, parseSync, Visitor } from 'oxc-parser';

export interface Mutant {
  /** Below the root of the project. */
  readonly file: string;
  readonly kind: 'comparison' | 'arithmetic' | 'logic' | 'boolean' | 'number' | 'condition' | 'method' | 'statement' | 'return';
  readonly line: number;
  /** What is replaced: an expression, or the statement that is one. */
  readonly start: number;
  readonly end: number;
  readonly replacement: string;
}

const operators: Readonly<Record<string, readonly [Mutant['kind'], ...string[]]>> = {
  '<': ['comparison', '<=', '>='],
  '<=': ['comparison', '<', '>'],
  '>': ['comparison', '>=', '<='],
  '>=': ['comparison', '>', '<'],
  '===': ['comparison', '!=='],
  '!==': ['comparison', '==='],
  '+': ['arithmetic', '-'],
  '-': ['arithmetic', '+'],
  '*': ['arithmetic', '/'],
  '/': ['arithmetic', '*'],
  '%': ['arithmetic', '*'],
  '**': ['arithmetic', '*'],
  '+=': ['arithmetic', '-='],
  '-=': ['arithmetic', '+='],
  '&&': ['logic', '||'],
  '||': ['logic', '&&'],
  '??': ['logic', '&&'],
};

const methods: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  some: 'every',
  every: 'some',
  floor: 'ceil',
  ceil: 'floor',
};

/** Every mutant of a source, in its order. */
export function mutantsOf(file: string, source: string): Mutant[] {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]!.message}`);
  const found: Mutant[] = [];
  /** A number in a type or as the name of a property decides nothing while the program runs. */
  const notRun: Node[] = [];
  const text = ({ start, end }: { readonly start: number; readonly end: number }): string => source.slice(start, end);
  const add = (kind: Mutant['kind'], { start, end }: Node, replacement: string): void => {
    found.push({ file, kind, line: source.slice(0, start).split('\n').length, start, end, replacement });
  };
  /** `a ?? b && c` cannot be read. */
  const operand = (node: Node): string => (node.type === 'LogicalExpression' ? `(${text(node)})` : text(node));
  const operator = (node: Node, left: Node, sign: string, right: Node): void => {
    const [kind, ...others] = operators[sign] ?? [];
    if (kind === undefined) return;
    const between = source.slice(left.end, right.start);
    for (const other of others) add(kind, node, operand(left) + between.replace(sign, other) + operand(right));
  };
  const condition = (test: Node): void => {
    for (const value of ['true', 'false']) add('condition', test, value);
  };
  new Visitor({
    BinaryExpression: node => operator(node, node.left, node.operator, node.right),
    LogicalExpression: node => operator(node, node.left, node.operator, node.right),
    AssignmentExpression: node => operator(node, node.left, node.operator, node.right),
    IfStatement: node => condition(node.test),
    ConditionalExpression: node => condition(node.test),
    UnaryExpression: node => {
      if (node.operator === '!' || node.operator === '-')
        add(node.operator === '!' ? 'logic' : 'arithmetic', node, `(${text(node.argument)})`);
    },
    Literal: node => {
      if (typeof node.value === 'boolean') add('boolean', node, String(!node.value));
      if (typeof node.value === 'number') add('number', node, String(node.value + 1));
    },
    CallExpression: node => {
      const { callee } = node;
      if (callee.type !== 'MemberExpression' || callee.property.type !== 'Identifier' || callee.computed) return;
      const { name } = callee.property;
      if (!Object.hasOwn(methods, name)) return;
      const other = methods[name]!;
      add('method', node, source.slice(node.start, callee.property.start) + other + source.slice(callee.property.end, node.end));
    },
    ExpressionStatement: node => {
      if (node.expression.type !== 'Literal') add('statement', node.expression, 'undefined');
    },
    ReturnStatement: node => {
      if (node.argument !== null && text(node.argument) !== 'undefined') add('return', node.argument, 'undefined');
    },
    ArrowFunctionExpression: node => {
      if (node.body.type !== 'BlockStatement' && text(node.body) !== 'undefined') add('return', node.body, 'undefined');
    },
    TSLiteralType: node => void notRun.push(node),
    Property: node => {
      if (!node.computed) notRun.push(node.key);
    },
  }).visit(program);
  return found
    .filter(({ start, end }) => !notRun.some(node => node.start <= start && end <= node.end))
    .sort((one, other) => one.start - other.start || other.end - one.end);
}

/** The source with one mistake. */
export function mutated(source: string, { start, end, replacement }: Mutant): string {
  return `${source.slice(0, start)}(${replacement})${source.slice(end)}`;
}

/** The source as it is, where each of some mutants tells its number when its place is reached: `reached(7), …`. */
export function watched(source: string, mutants: readonly (readonly [number: number, mutant: Mutant])[]): string {
  const pieces = mutants.flatMap(([number, { start, end }]) => [
    // What begins first at one place ends last.
    { at: start, order: -end, text: `(globalThis.reached?.(${number}), (` },
    { at: end, order: Number.MIN_SAFE_INTEGER - start, text: '))' },
  ]);
  let result = '';
  let from = 0;
  for (const { at, text } of pieces.sort((one, other) => one.at - other.at || one.order - other.order)) {
    result += source.slice(from, at) + text;
    from = at;
  }
  return result + source.slice(from);
}
