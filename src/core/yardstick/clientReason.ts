import type { AdditiveClass } from '#core/additive/additive.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { type BoundTest, isBoundTest } from './boundTest.ts';
import type { SeldomPrinted } from './byLabel.ts';
import type { UnsafeFood } from './foodSafety.ts';
import { kinTitle } from './ingredientKin.ts';
import type { Found, Test, TestVerdict, Verdict, VerdictWord, Yardstick } from './yardstick.ts';

/** Why a food is, or is not, for one client: one reason a test, and what no test can tell. */
export type ClientReason =
  | (Absent & { readonly kind: 'allergen' | 'avoided'; readonly kin: string })
  | (Absent & { readonly kind: 'additive'; readonly class: AdditiveClass; readonly because: string })
  | {
      readonly kind: 'nutrient';
      readonly testId: string;
      readonly nutrient: Nutrient;
      readonly verdict: VerdictWord;
      /** What was compared and the bound, in the nutrient's unit, on the whole plate. */
      readonly judged?: Interval;
      readonly bound: number;
      readonly why: string;
    }
  /** Signed, and not on the label: judged by additives in its place. */
  | { readonly kind: 'mineral-not-told'; readonly testId: SeldomPrinted; readonly mineral: SeldomPrinted }
  /** Not safe while the immune system is held down. */
  | { readonly kind: 'unsafe'; readonly food: UnsafeFood };

interface Absent {
  readonly testId: string;
  readonly presence: Found['how'] | 'none-named';
  /** The words on the label and the food on the plate that has them; missing where none is named. */
  readonly found?: Found;
}

/** What a client may have of a food: the whole portion, less of it, no portion; ask the maker first; never. */
export type Offer = 'portion' | 'less' | 'none' | 'ask' | 'never';

/** Whether a reason forbids the food whatever the portion. */
export function forbids(reason: ClientReason): boolean {
  if (reason.kind === 'unsafe') return reason.food.rule === 'never';
  return 'presence' in reason && reason.presence === 'named';
}

/** Whether the label leaves open what forbids the food. Figures that nobody knows are a reason to ask too. */
export function asks(reason: ClientReason): boolean {
  if ('presence' in reason) return reason.presence !== 'named' && reason.presence !== 'none-named';
  return reason.kind === 'nutrient' && reason.verdict === "can't tell";
}

export interface Reasoned {
  readonly yardstick: Yardstick;
  readonly verdict: Verdict;
  /** Kin keys of the client's allergies: what else is avoided is avoided. */
  readonly allergies: ReadonlySet<string>;
  readonly notTold: readonly SeldomPrinted[];
  readonly unsafe?: UnsafeFood;
}

/** The reasons of a verdict, the gravest first: what must not be eaten, what has to be asked, what is over, what fits. */
export function clientReasons({ yardstick, verdict, allergies, notTold, unsafe }: Reasoned): readonly ClientReason[] {
  const tests = new Map(yardstick.tests.map(test => [test.id, test]));
  const reasons: readonly ClientReason[] = [
    ...(unsafe === undefined ? [] : [{ kind: 'unsafe', food: unsafe } as const]),
    ...verdict.tests.flatMap(outcome => reasonOf(tests.get(outcome.testId), outcome, allergies)),
    ...notTold.map(mineral => ({ kind: 'mineral-not-told', testId: mineral, mineral }) as const),
  ];
  return [...reasons].sort((a, b) => gravity(a) - gravity(b));
}

function reasonOf(test: Test | undefined, outcome: TestVerdict, allergies: ReadonlySet<string>): readonly ClientReason[] {
  if (test === undefined) return [];
  const { testId, found } = outcome;
  const absent: Absent = { testId, presence: found?.how ?? 'none-named', ...(found === undefined ? {} : { found }) };
  const { measure } = test;
  if (measure.kind === 'ingredient') return [{ ...absent, kind: allergies.has(measure.kin) ? 'allergen' : 'avoided', kin: measure.kin }];
  if (measure.kind === 'additive') return [{ ...absent, kind: 'additive', class: measure.class, because: test.source.text }];
  return isBoundTest(test) ? [nutrientReason(test, outcome)] : [];
}

function nutrientReason(test: BoundTest, { testId, verdict, judged, bound, why }: TestVerdict): ClientReason {
  return {
    kind: 'nutrient',
    testId,
    nutrient: test.measure.nutrient,
    verdict,
    ...(judged === undefined ? {} : { judged }),
    bound: bound ?? test.atMost ?? test.below ?? Number.POSITIVE_INFINITY,
    why,
  };
}

/** An allergen before an avoided food before an additive, named before possible; then figures. */
function gravity(reason: ClientReason): number {
  const kinds = ['allergen', 'avoided', 'additive', 'unsafe', 'nutrient', 'mineral-not-told'] as const;
  const rank = kinds.indexOf(reason.kind);
  if (forbids(reason)) return rank;
  if (asks(reason)) return 10 + rank;
  if (reason.kind === 'nutrient') return { over: 20, nearly: 21, "can't tell": 10, fits: 40 }[reason.verdict];
  return (reason.kind === 'unsafe' || reason.kind === 'mineral-not-told' ? 30 : 40) + rank;
}

const additiveWords: Readonly<Record<AdditiveClass, string>> = {
  phosphate: 'a phosphate additive',
  potassium: 'an added potassium salt',
  sodium: 'added salt or sodium',
};

/** A reason as the dietitian reads it: "Not for this client: peanuts (allergy), “PEANUTS” named on the label." */
export function reasonText(reason: ClientReason): string {
  switch (reason.kind) {
    case 'allergen':
    case 'avoided':
      return absentText(reason, `${kinTitle(reason.kin)} (${reason.kind === 'allergen' ? 'allergy' : 'avoided'})`);
    case 'additive':
      return absentText(reason, `${additiveWords[reason.class]} (${reason.because})`);
    case 'unsafe':
      return reason.food.rule === 'never' ? `Not for this client. ${reason.food.line.en}.` : `${reason.food.line.en}.`;
    case 'mineral-not-told':
      return `Fits by what the label tells; ${reason.mineral} not known.`;
    default:
      return reason.why;
  }
}

function absentText({ presence, found }: Absent, what: string): string {
  if (found === undefined || presence === 'none-named') return `${what}: none named on the label.`;
  const where = `${found.food}: ${found.words}`;
  return presence === 'named' ? `Not for this client: ${what}. ${where}.` : `Ask first about ${what}. ${where}.`;
}
