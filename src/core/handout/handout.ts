import type { ClientAim } from '#core/client/aims/clientAims.ts';
import type { Limit, TargetItem, TargetUnit } from '#core/client/prescription/target.ts';
import type { MealShare } from '#core/client/record/record.ts';
import type { WeightGainToCall } from '#core/client/states/weightGain.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { SeldomPrinted } from '#core/yardstick/byLabel.ts';
import type { UnsafeFood } from '#core/yardstick/foodSafety.ts';
import type { WayIn } from '#core/yardstick/wayIn.ts';
import type { Setting, Verdict, Yardstick } from '#core/yardstick/yardstick.ts';

export const languages = ['en', 'es'] as const;
export type Language = (typeof languages)[number];

/** What a handout may hold. Who wrote it, when to call and the cautions stand in every one. */
export const handoutParts = ['fridge', 'numbers', 'foods', 'labels', 'swaps', 'shopping'] as const;
export type HandoutPart = (typeof handoutParts)[number];

/** What the dietitian writes and picks; docs/formats.md holds the JSON. What can be computed is not in it. */
export interface HandoutDraft {
  /** Small letters, digits and hyphens: it names the files. */
  readonly id: string;
  readonly language: Language;
  /** The program's own when missing. */
  readonly title?: string;
  /** Only where the dietitian typed it. */
  readonly reader?: string;
  readonly setting: Setting;
  readonly writtenOn: Day;
  readonly author: { readonly name: string; readonly credentials?: string };
  /** Whom to call, as the author writes it: it stands on the fridge page, so it is short. */
  readonly callUs?: string;
  readonly notes: readonly string[];
  readonly parts: readonly HandoutPart[];
  readonly categories: readonly HandoutCategory[];
  /** Aisles in the order of a walk through the shop. */
  readonly aisleOrder: readonly string[];
  readonly meals: readonly MealShare[];
  /** Of one client, as signed. Missing in a handout on a topic. */
  readonly prescription?: SignedTargets;
  /** The gain of weight for which this client calls the same day; missing where there is no such line. */
  readonly weightGain?: Pick<WeightGainToCall, 'kg' | 'within'>;
  /** Foods and allergies that this client avoids. */
  readonly avoidedFoods: readonly string[];
  /** Medicines hold the immune system down; after a transplant it is so without being told. */
  readonly immuneSuppressed?: boolean;
  /** What this client's foods are picked for, the gravest first; none in a handout on a topic. */
  readonly aims?: readonly ClientAim[];
  /** Of a handout on a topic: what its foods are judged by. */
  readonly topic?: { readonly yardstickId: string; readonly switchedOn: readonly string[] };
}

/** What the dietitian writes for a client's handout; setting, targets, avoided foods and meals come from the record. */
export type ClientHandoutDraft = Omit<
  HandoutDraft,
  'setting' | 'prescription' | 'weightGain' | 'avoidedFoods' | 'immuneSuppressed' | 'aims' | 'meals' | 'topic'
>;

export interface HandoutCategory {
  readonly category: string;
  /** As the page calls it; the category's own name when missing. */
  readonly title?: string;
  readonly plateId: string;
  /** The meal of the pattern at which these are eaten; the first when missing. */
  readonly meal?: string;
  /** Where the shop has them. */
  readonly aisle?: string;
  /** By food id, where a food stands in another aisle. */
  readonly foodAisles: Readonly<Record<string, string>>;
  /** Food ids that the author leaves out. */
  readonly leftOut: readonly string[];
}

export interface SignedTargets {
  readonly targets: readonly SignedTarget[];
  readonly signed: { readonly by: string; readonly credentials?: string; readonly on: Day };
}

/** A day's target as it was signed. Without a range a handout gives no number, and never says that there is no limit. */
export interface SignedTarget {
  readonly item: TargetItem;
  readonly unit: TargetUnit;
  readonly range?: Interval;
  readonly limit?: Limit;
}

/** A category judged on a plate, by a meal's share of the prescription or by the topic's yardstick. */
export interface HandoutSurvey {
  readonly category: HandoutCategory;
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly switchedOn: readonly string[];
  /** Estimated minerals may be used, at their safe end. */
  readonly useEstimates?: boolean;
  /** The same for the whole day; none in a handout on a topic. */
  readonly dayYardstick?: Yardstick;
  readonly foods: readonly HandoutFood[];
}

export interface HandoutFood {
  readonly food: PlateFood;
  readonly verdict: Verdict;
  /** Of a food that is over or nearly, smallest change first. */
  readonly ways: readonly WayIn[];
  /** Signed minerals that its label does not tell; the verdict is by additives in their place. */
  readonly notTold?: readonly SeldomPrinted[];
  /** Stands on the food wherever it is listed, for a reader whose immune system is held down. */
  readonly unsafe?: UnsafeFood;
}

export interface HandoutInput {
  readonly draft: HandoutDraft;
  readonly surveys: readonly HandoutSurvey[];
}
