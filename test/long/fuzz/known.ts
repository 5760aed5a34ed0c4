import type { Chance } from './chance.ts';

const mostIds = 400;

/** Identities that answers told, with their versions, by the word of the address that they belong to: with made-up ones alone nothing would ever be found. */
export class Known {
  private readonly ids = new Map<string, Map<string, unknown>>();

  learn({ path }: { readonly path: string }, answer: string): void {
    if (!/^[{[]/.test(answer) || answer.length > 2_000_000) return;
    const kind = path.split('/')[2] ?? '';
    try {
      this.walk(kind, JSON.parse(answer), 0);
    } catch {
      // An answer that is no JSON teaches nothing.
    }
  }

  /** An identity and the version that was last seen of it. */
  one(chance: Chance, kind: string): readonly [id: string, version: unknown] | undefined {
    const ids = this.ids.get(kind);
    return ids === undefined || ids.size === 0 ? undefined : chance.of([...ids]);
  }

  private walk(kind: string, value: unknown, depth: number): void {
    if (typeof value !== 'object' || value === null || depth > 6) return;
    if ('id' in value && typeof value.id === 'string') this.add(kind, value.id, 'version' in value ? value.version : undefined);
    if ('version' in value && depth === 0 && !('id' in value))
      for (const part of Object.values(value)) this.nested(kind, part, value.version);
    if (Array.isArray(value)) for (const one of value.slice(0, 100)) this.withVersion(kind, one, depth);
    else for (const [key, one] of Object.entries(value)) this.walk(key === 'labels' || key === 'photoIds' ? key : kind, one, depth + 1);
  }

  /** `{ plate: { id }, version }`, as lists of documents answer. */
  private withVersion(kind: string, value: unknown, depth: number): void {
    this.walk(kind, value, depth + 1);
    if (typeof value === 'object' && value !== null && 'version' in value)
      for (const part of Object.values(value)) this.nested(kind, part, value.version);
  }

  private nested(kind: string, part: unknown, version: unknown): void {
    if (typeof part === 'object' && part !== null && 'id' in part && typeof part.id === 'string') this.add(kind, part.id, version);
  }

  private add(kind: string, id: string, version: unknown): void {
    const ids = this.ids.get(kind) ?? new Map<string, unknown>();
    this.ids.set(kind, ids);
    ids.delete(id);
    ids.set(id, version);
    if (ids.size > mostIds) ids.delete(ids.keys().next().value!);
  }
}
