import { testServer } from '../src/server/testWorld.fixture.ts';
import { table } from './table.ts';

/** As much of an OpenAPI 3.1 document as the page shows. */
interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly allOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
}
type Content = Readonly<Record<string, { readonly schema: Schema }>>;
interface Call {
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly required?: boolean }[];
  readonly requestBody?: { readonly content: Content };
  readonly responses: { readonly 200: { readonly description: string; readonly content: Content } };
}
interface Description {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Call>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

const head = `# The workbench's own interface

Made from \`/api/openapi.json\` by \`node docs/generate.ts\`; do not edit. What a call does is written beside its route, in \`src/server/routes\`.

One process on the loopback address. JSON in and out, where no other type is named; faults are problem details (RFC 9457) with \`code\`, \`title\`,
\`detail\` and \`nextStep\`. Everybody must have opened the printed address first ([security.md](security.md)). Shapes are zod schemas of the server and
of the core's codecs; the browser's client takes its types from the server (\`hono/client\`), never by hand. A \`version\` is the one that was seen: where
somebody else changed the thing since, nothing is written. What ends in \`?\` may be missing.

`;

/** docs/api.md, from what the server itself answers. */
export async function apiPage(): Promise<string> {
  const server = await testServer(false);
  const { body } = await server.call('GET', '/openapi.json');
  await server.close();
  const { paths, components }: Description = body;
  const calls = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, call]) => ({ path, method, call, noun: path.split('/')[2]! })),
  );
  const nouns = [...new Set(calls.map(({ noun }) => noun))].sort();
  const parts = nouns.map(noun => {
    const rows = calls
      .filter(one => one.noun === noun)
      .map(({ path, method, call }) => [`\`${method.toUpperCase()} ${path}\``, taken(call), given(call), call.responses[200].description]);
    return `## ${noun}\n\n${table([['call', 'takes', 'gives', 'which is'], ...rows])}`;
  });
  const shapes = Object.entries(components.schemas)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, schema]) => [`\`${name}\``, shapeOf(schema)]);
  return `${head}${parts.join('\n')}\n## Shapes\n\nThe fields of each, one level deep; \`/api/openapi.json\` has what is in them.\n\n${table([['shape', 'holds'], ...shapes])}`;
}

function taken({ parameters = [], requestBody }: Call): string {
  const asked = parameters
    .filter(one => one.in === 'query')
    .map(({ name, required }) => `\`${name}${required ? '' : '?'}\` in the address`);
  const bodies = Object.entries(requestBody?.content ?? {}).map(ofType);
  return [...asked, ...bodies].join('; ') || '–';
}

function given({ responses }: Call): string {
  return Object.entries(responses[200].content).map(ofType).join(', ');
}

/** JSON by its shape, a form by its fields, any other file by its type. */
function ofType([type, { schema }]: readonly [string, { readonly schema: Schema }]): string {
  if (type === 'application/json') return shapeOf(schema);
  return type === 'multipart/form-data' ? `${shapeOf(schema)} as \`${type}\`` : `\`${type}\``;
}

/** A shape in a cell: its name, or its fields. */
function shapeOf(schema: Schema): string {
  if (schema.$ref !== undefined) return `\`${schema.$ref.split('/').at(-1)}\``;
  const all = schema.allOf ?? schema.anyOf ?? schema.oneOf;
  if (all !== undefined) return all.map(shapeOf).join(schema.allOf === undefined ? ' or ' : ' with ');
  if (schema.items !== undefined) return `list of ${shapeOf(schema.items)}`;
  if (schema.properties !== undefined) {
    const needed = new Set(schema.required);
    const fields = Object.entries(schema.properties).map(([name, field]) => `\`${name}${needed.has(name) ? '' : '?'}\`${onlyWord(field)}`);
    return fields.join(', ') || 'nothing';
  }
  if (schema.enum !== undefined) return schema.enum.map(word => `\`${JSON.stringify(word)}\``).join(' or ');
  return [schema.type ?? 'anything'].flat().join(' or ');
}

/** The one word that a field may hold, as "delete everything" is. */
function onlyWord({ enum: words }: Schema): string {
  return words?.length === 1 ? ` = \`${JSON.stringify(words[0])}\`` : '';
}
