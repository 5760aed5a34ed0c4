import { readFileSync } from 'node:fs';
import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { type NextCheck, nextChecks } from '#core/client/cautions/nextChecks.ts';
import { proposalToJson } from '#core/client/prescription/proposalToJson.ts';
import { type Proposal, proposePrescription } from '#core/client/prescription/proposePrescription.ts';

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
  const { value, issues: misread } = assessmentFromJson(assessment);
  if (value === undefined) {
    const issues = misread.map(({ place, expected }) => ({ told: `${place.heading ?? 'the assessment'}: expected ${expected}` }));
    return { kind: 'barred', issues, cautions: [], nextChecks: [] };
  }
  const answer = { ...proposePrescription(value, today), nextChecks: nextChecks(value, today) };
  return JSON.parse(JSON.stringify(proposalToJson(answer))) as Answer;
}

export interface Answer {
  readonly kind: Proposal['kind'];
  readonly issues?: readonly { readonly told: string }[];
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
    const told = (answer.issues ?? []).map(issue => issue.told).join(' ');
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

/** An expectation in few words, and what the program says there. */
export function expectationWords(expected: Expectation): string {
  if ('path' in expected) return `${expected.path.replace('targets.', '')} = ${JSON.stringify(expected.is)}`;
  if ('says' in expected) return `${expected.in.replace('targets.', '')} says /${expected.says}/`;
  if ('silent' in expected) return `${expected.in.replace('targets.', '')} does not say /${expected.silent}/`;
  if ('caution' in expected) return `told: /${expected.caution}/${expected.contact === undefined ? '' : `, ${expected.contact}`}`;
  if ('noCaution' in expected) return `not told: /${expected.noCaution}/${expected.contact === undefined ? '' : ` as ${expected.contact}`}`;
  if ('kind' in expected) return `${expected.kind}: /${expected.told}/`;
  if ('check' in expected) return `check /${expected.check}/ ${expected.state ?? ''} ${expected.dueBy ?? ''}`.trim();
  return `no check /${expected.noCheck}/`;
}

export function gotWords(expected: Expectation, answer: Answer): string {
  const wrong = missed(expected, answer);
  if (wrong !== undefined) return `**${wrong}**`;
  if ('path' in expected) return JSON.stringify(at(answer, expected.path));
  if ('says' in expected || 'silent' in expected) return targetWords(at(answer, expected.in));
  if ('caution' in expected) {
    const [found] = cautionsLike(expected.caution, expected.contact, answer);
    return `${found?.id}${found?.contact === undefined ? '' : `, ${found.contact}`}`;
  }
  if ('kind' in expected) return `${answer.kind}: ${(answer.issues ?? []).map(({ told }) => told).join(' ')}`;
  if ('check' in expected) {
    const found = answer.nextChecks.find(({ item }) => matches(expected.check, item));
    return `${found?.item} ${found?.state}, ${found?.dueBy}`;
  }
  return 'silent';
}

function targetWords(target: unknown): string {
  if (typeof target !== 'object' || target === null || !('kind' in target)) return 'no such thing is said';
  const range = 'range' in target ? ` ${JSON.stringify(target.range)}` : '';
  return `${String(target.kind)}${range}`;
}
