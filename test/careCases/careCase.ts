import { readFileSync } from 'node:fs';
import { assessmentFromJson } from '#core/client/assessmentFromJson.ts';
import { type NextCheck, nextChecks } from '#core/client/nextChecks.ts';
import { proposalToJson } from '#core/client/proposalToJson.ts';
import { type Proposal, proposePrescription } from '#core/client/proposePrescription.ts';

/**
 * Cases worked out by hand from the clinical sheets before they were run: what must be said of a client, and what must not. Patterns
 * are regular expressions without regard to case, so that wording may change and meaning may not.
 */
export interface CareCase {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly today: string;
  readonly assessment: unknown;
  readonly expect: readonly Expectation[];
  readonly worked?: string;
  readonly note?: string;
}

export type Expectation =
  | { readonly path: string; readonly is: unknown; readonly tolerance?: number }
  | { readonly says: string; readonly in: string }
  | { readonly silent: string; readonly in: string }
  | { readonly caution: string; readonly contact?: string }
  | { readonly noCaution: string; readonly contact?: string }
  | { readonly kind: string; readonly told: string }
  | { readonly check: string; readonly state?: string; readonly dueBy?: string }
  | { readonly noCheck: string };

export const careCases = JSON.parse(readFileSync(new URL('cases.json', import.meta.url), 'utf8')) as readonly CareCase[];

/** What the program says of a case, as `platewright prescribe` prints it: an open end is null. */
export function answerTo({ assessment, today }: CareCase): Answer {
  const { value, issues } = assessmentFromJson(assessment);
  if (value === undefined) {
    const bars = issues.map(({ place, expected }) => ({ told: `${place.heading ?? 'the assessment'}: expected ${expected}` }));
    return { kind: 'barred', bars, cautions: [], nextChecks: [] };
  }
  const answer = { ...proposePrescription(value, today), nextChecks: nextChecks(value, today) };
  return JSON.parse(JSON.stringify(proposalToJson(answer))) as Answer;
}

export interface Answer {
  readonly kind: Proposal['kind'];
  readonly bars?: readonly { readonly told: string }[];
  readonly cautions: readonly { readonly id: string; readonly told: string; readonly because: string; readonly contact?: string }[];
  readonly nextChecks: readonly NextCheck[];
  readonly targets?: Readonly<Record<string, unknown>>;
}

/** What was got in the place of an expectation; undefined where it is kept. */
export function missed(expected: Expectation, answer: Answer): string | undefined {
  if ('path' in expected) {
    const got = at(answer, expected.path);
    return isNear(got, expected.is, expected.tolerance ?? 1e-6) ? undefined : `${expected.path} is ${JSON.stringify(got)}`;
  }
  if ('says' in expected)
    return matches(expected.says, at(answer, expected.in)) ? undefined : `${expected.in} does not say /${expected.says}/`;
  if ('silent' in expected)
    return matches(expected.silent, at(answer, expected.in)) ? `${expected.in} says /${expected.silent}/` : undefined;
  if ('caution' in expected) {
    const found = cautionsLike(expected.caution, expected.contact, answer);
    return found.length > 0
      ? undefined
      : `no caution /${expected.caution}/${expected.contact === undefined ? '' : ` with ${expected.contact}`}`;
  }
  if ('noCaution' in expected) {
    const [found] = cautionsLike(expected.noCaution, expected.contact, answer);
    return found && `caution ${found.id} (${found.contact ?? 'no contact'}): ${found.told} ${found.because}`;
  }
  if ('kind' in expected) {
    const told = (answer.bars ?? []).map(bar => bar.told).join(' ');
    return answer.kind === expected.kind && matches(expected.told, told) ? undefined : `${answer.kind}: ${told}`;
  }
  if ('check' in expected) {
    const found = answer.nextChecks.filter(({ item }) => matches(expected.check, item));
    const isMet = found.some(
      one =>
        (expected.state === undefined || one.state === expected.state) && (expected.dueBy === undefined || one.dueBy === expected.dueBy),
    );
    return isMet ? undefined : `checks: ${found.map(({ item, state, dueBy }) => `${item} ${state} ${dueBy}`).join('; ') || 'none'}`;
  }
  const surplus = answer.nextChecks.find(({ item }) => matches(expected.noCheck, item));
  return surplus && `check ${surplus.item} ${surplus.state} ${surplus.dueBy}`;
}

function cautionsLike(words: string, contact: string | undefined, { cautions }: Answer) {
  const ofContact = (given: string | undefined) => contact === undefined || (contact === 'none' ? given === undefined : given === contact);
  return cautions.filter(({ id, told, because, contact: given }) => matches(words, `${id} ${told} ${because}`) && ofContact(given));
}

function matches(words: string, value: unknown): boolean {
  return new RegExp(words, 'i').test(typeof value === 'string' ? value : JSON.stringify(value ?? null));
}

function at(answer: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => (value as Readonly<Record<string, unknown>> | undefined)?.[key], answer);
}

function isNear(got: unknown, wanted: unknown, tolerance: number): boolean {
  if (typeof got === 'number' && typeof wanted === 'number') return Math.abs(got - wanted) <= tolerance;
  if (Array.isArray(got) && Array.isArray(wanted))
    return got.length === wanted.length && got.every((one, i) => isNear(one, wanted[i], tolerance));
  return got === wanted;
}
