/** Values that fit a description of /api/openapi.json, so that what is changed afterwards gets past the first look. */
import type { Chance } from './chance.ts';
import { assessments, formsOf } from './jsonReaders.ts';
import { oddNumbers, oddTexts } from './mutate.ts';

export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly prefixItems?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly format?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly additionalProperties?: boolean | Schema;
}
export type Schemas = Readonly<Record<string, Schema>>;

/** Whole things for the parts that a codec of the core reads. */
const samples: Readonly<Record<string, readonly unknown[]>> = {
  LabelJson: formsOf('label'),
  PlateJson: formsOf('plate'),
  YardstickJson: formsOf('yardstick'),
  GuideJson: formsOf('guide'),
  HandoutJson: formsOf('handout'),
  NewSavedSurvey: formsOf('savedSurvey'),
  AssessmentJson: assessments,
};
/** Words that stand for something: categories, plates, yardsticks, analytes, units, names of the catalog. */
const words = [
  'sandwich slices',
  'soups and broths',
  'cereal-with-milk',
  'as-is',
  'low-sodium-claim',
  'sodium',
  'potassium',
  'mmol/L',
  'kg',
  'body-mass-index',
  'name',
  '70',
  'a word',
  'seven herons by the weir',
];

export function madeOf(chance: Chance, schema: Schema, schemas: Schemas, depth = 6): unknown {
  if (schema.$ref !== undefined) {
    const name = schema.$ref.split('/').at(-1)!;
    const known = samples[name];
    if (known !== undefined && known.length > 0) return structuredClone(chance.of(known));
    return depth === 0 ? {} : madeOf(chance, schemas[name] ?? {}, schemas, depth - 1);
  }
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return chance.of(schema.enum);
  const one = schema.anyOf ?? schema.oneOf;
  if (one !== undefined) return madeOf(chance, chance.of(one), schemas, depth - 1);
  if (schema.allOf !== undefined) return Object.assign({}, ...schema.allOf.map(part => madeOf(chance, part, schemas, depth - 1)));
  const { type } = schema;
  switch (typeof type === 'string' || type === undefined ? type : chance.of(type)) {
    case 'object':
      return objectOf(chance, schema, schemas, depth);
    case 'array':
      if (schema.prefixItems !== undefined) return schema.prefixItems.map(part => madeOf(chance, part, schemas, depth - 1));
      return depth <= 0 ? [] : Array.from({ length: chance.below(4) }, () => madeOf(chance, schema.items ?? {}, schemas, depth - 1));
    case 'string':
      return textOf(chance, schema);
    case 'integer':
      return (schema.minimum ?? 1) + chance.below(Math.min(3, (schema.maximum ?? 9) - (schema.minimum ?? 1) + 1));
    case 'number':
      return chance.oneIn(4) ? chance.of(oddNumbers) : chance.of([1, 0.5, 70, 200]);
    case 'boolean':
      return chance.oneIn(2);
    case 'null':
      return null;
    default:
      return chance.of(words);
  }
}

function objectOf(
  chance: Chance,
  { properties = {}, required = [], additionalProperties }: Schema,
  schemas: Schemas,
  depth: number,
): unknown {
  if (depth <= 0) return {};
  const made: Record<string, unknown> = {};
  for (const [key, part] of Object.entries(properties)) {
    if (required.includes(key) || chance.oneIn(2)) made[key] = madeOf(chance, part, schemas, depth - 1);
  }
  if (typeof additionalProperties === 'object')
    for (let more = chance.below(4); more > 0; more -= 1) made[chance.of(words)] = madeOf(chance, additionalProperties, schemas, depth - 1);
  return made;
}

function textOf(chance: Chance, { format }: Schema): string {
  if (format === 'uuid') return `00000000-0000-4000-8000-00000000000${chance.below(10)}`;
  if (format === 'date') return `2026-0${1 + chance.below(9)}-1${chance.below(10)}`;
  return chance.oneIn(5) ? chance.of(oddTexts) : chance.of(words);
}
