import type { AdditiveClass } from '#core/additive/additive.ts';
import type { AimedAmount, ClientAim } from '#core/client/aims/clientAims.ts';
import type { Need } from '#core/client/aims/needs.ts';
import type { HouseholdFluid } from '#core/client/prescription/householdFluid.ts';
import type { TargetItem, TargetUnit } from '#core/client/prescription/target.ts';
import type { WeightGainToCall } from '#core/client/states/weightGain.ts';
import type { Portion } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { SeldomPrinted } from '#core/yardstick/byLabel.ts';
import type { UnsafeFood } from '#core/yardstick/foodSafety.ts';
import type { Setting } from '#core/yardstick/yardstick.ts';
import type { Line, Run, SectionId } from '../handoutPage.ts';

/** What a target's range asks, told with its figures and unit. */
export type Asked =
  | { readonly kind: 'below' | 'at-most' | 'at-least' | 'about'; readonly figure: string }
  | { readonly kind: 'between'; readonly lo: string; readonly hi: string };

/** What bars a food, as few words as do. */
export type WhyNot =
  | { readonly kind: 'nutrient'; readonly nutrient: Nutrient }
  | { readonly kind: 'sodium-to-energy' }
  | { readonly kind: 'additive'; readonly class: AdditiveClass }
  | { readonly kind: 'ingredient'; readonly name: string }
  | { readonly kind: 'other' };

/** A rule of a topic's yardstick on sodium: at most so much on a basis, or as much as the energy of what is eaten together. */
export type BasisWords = 'serving' | 'portion' | 'plate' | '100-g' | '100-ml' | 'reference-amount' | 'day';

/** What a handout says of the reasons for which one client's foods are picked. */
export interface AimWords {
  /** Why foods are picked as they are: for this client's own reasons. */
  readonly aim: (aim: ClientAim) => Line;
  /** The same for the fridge page, which visitors read: no result and no diagnosis. */
  readonly pickedFor: (aims: readonly ClientAim[]) => Line;
  /** Amounts that foods are picked by, and that a label does not tell. */
  readonly amountsNotKnown: (amounts: readonly Exclude<AimedAmount, 'fluidMl'>[]) => string;
  /** "Counts as 1 of your 4 cups of fluid"; of a need, of the cups to drink. */
  readonly countsAsFluid: (portion: HouseholdFluid, day: HouseholdFluid, kind: 'most' | 'need') => string;
  readonly fluidNotKnown: string;

  readonly moreOf: Readonly<Record<Need, string>>;
  readonly addFoods: (need: Need, day: string) => Line;
  readonly atLeastIn: (need: Need, amount: string) => string;
  readonly noneToAdd: Line;
  /** What a swap has less of, where more is needed; `isSure` where both labels tell. */
  readonly swapLowers: (needs: readonly Need[], isSure: boolean) => Line;
}

/**
 * Everything that a handout says of its own, in one language. A language that lacks a text does not compile. English keeps to grade 6
 * (tests measure it); no other language is graded.
 */
export interface Words extends AimWords {
  readonly titleFor: Readonly<Record<Setting, string>>;
  readonly sectionTitle: Readonly<Record<SectionId, string>>;
  readonly topicNumbersTitle: string;
  readonly forReader: (name: Run) => Line;
  readonly byAuthor: (name: Run) => Line;
  readonly settingLine: (setting: Setting) => Line;
  readonly writtenOn: (day: Day) => Line;

  readonly targetNames: Readonly<Record<TargetItem, string>>;
  readonly nutrientNames: Readonly<Partial<Record<Nutrient, string>>>;
  readonly units: Readonly<Record<TargetUnit, string>>;
  readonly asked: (asked: Asked) => string;
  /** "4 cups, or 33 fluid ounces". */
  readonly fluidMeasures: (fluid: HouseholdFluid) => string;
  /** Above a column of figures that are all meant so. */
  readonly askedHead: Readonly<Record<'below' | 'at-most', string>>;
  readonly aDay: string;
  /** A meal's name at the head of a row, and inside a sentence; one that the author made up stays. */
  readonly meal: (name: string) => string;
  readonly mealInSentence: (name: string) => string;
  readonly numbersCaption: string;
  readonly whatColumn: string;
  readonly dayTarget: (item: string, asked: string) => Line;
  readonly noneNamedTarget: (kind: AdditiveClass) => Line;
  readonly ownNumbers: (signedOn: Day, signer: Run) => readonly Line[];
  readonly sharesOfDay: Line;
  /** Under a bounded fluid. */
  readonly fluidCounts: Line;
  readonly noSodiumNumber: Line;
  readonly noNumbers: Line;
  readonly onlyTheTeam: Line;

  readonly sodiumRule: (most: string, basis: BasisWords) => Line;
  readonly sodiumToEnergy: Line;
  readonly companionRoom: (companions: Run, more: string) => Line;
  readonly additiveRule: (kind: AdditiveClass) => Line;
  readonly ingredientRule: (food: Run) => Line;
  readonly otherRule: (english: Run) => Line;

  readonly bestPicks: string;
  readonly lookFor: string;
  readonly foodsIntro: readonly Line[];
  readonly dayIsTheMost: Line;
  readonly eatenWith: (plate: Run) => Line;
  readonly forMeal: (meal: Run) => Line;
  readonly noneNamedHere: (kinds: readonly AdditiveClass[]) => readonly Line[];
  readonly inAMeal: (portion: string) => string;
  readonly inADay: (portion: string) => string;
  readonly portionOnly: (portion: string) => string;
  readonly sodiumInIt: (amount: string) => string;
  readonly notOnLabel: string;
  readonly closeCall: string;
  /** Beside a food that fits. */
  readonly potassiumNamed: string;
  readonly estimated: string;
  readonly noneFits: Line;
  readonly noneChecked: Line;
  readonly nothingBounds: Line;

  readonly askIntro: readonly Line[];
  readonly askWhy: (food: Run, why: WhyNot) => Line;

  readonly steps: {
    readonly serving: Line;
    /** Ends with the meals and their numbers: "lunch less than 600 mg". */
    readonly numberOfClient: (
      item: 'sodium' | 'potassium' | 'phosphorus',
      day: string,
      meals: readonly (readonly [meal: Run, most: string])[],
    ) => Line;
    readonly notPrinted: Line;
    readonly sodiumOfTopic: Line;
    readonly percent: Line;
    readonly ingredients: Line;
    readonly phosphate: Line;
    readonly potassium: Line;
    readonly avoided: (foods: readonly Run[]) => Line;
    readonly noneNamed: Line;
    readonly again: Line;
  };
  readonly fridgeLook: Readonly<Record<'sodium' | 'phosphate' | 'potassium', Line>>;
  readonly fridgeAvoid: (foods: readonly Run[]) => Line;

  readonly swapsIntro: Line;
  readonly swap: (from: Run, to: Run, why: WhyNot, saved: string | undefined) => Line;
  readonly smallerTitle: string;
  readonly smaller: (food: Run, portion: string, before: string) => Line;
  readonly otherCompanion: (food: Run, companion: Run) => Line;
  readonly halfAndHalf: (food: Run, portion: string, unsalted: Run, otherPortion: string) => Line;
  readonly noSwap: Line;

  readonly shoppingIntro: Line;
  readonly noAisle: string;

  readonly emergency: Line;
  readonly callToday: Line;
  readonly callWhen: Readonly<Record<Setting, readonly Line[]>>;
  /** A gain of weight for which this reader calls. */
  readonly weightGain: Readonly<Record<WeightGainToCall['within'], (kg: string, lb: string) => Line>>;
  /** On hemodialysis without a dry weight. */
  readonly weightGainNotKnown: Line;
  readonly callDietitian: Line;
  readonly cautions: readonly Line[];
  readonly clientCaution: Line;
  readonly settingCautions: Readonly<Record<Setting, readonly Line[]>>;
  readonly labelsRead: (from: Day, to: Day) => Line;

  readonly portion: (portion: Portion) => string;

  /** On a food for a reader whose immune system is held down; no sentence, so without its full stop. */
  readonly heatIt: (food: UnsafeFood) => string;
  readonly mineralsNotKnown: (minerals: readonly SeldomPrinted[]) => string;
  /** What the whole plate may take of sodium: "less than 600 mg". */
  readonly plateTakes: (most: string) => Line;
}
