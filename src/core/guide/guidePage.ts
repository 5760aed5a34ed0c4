import type { Day } from '#core/quantity/calendarDay.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { PlaneRule } from '#core/yardstick/planeRule.ts';
import type { VerdictWord } from '#core/yardstick/yardstick.ts';
import type { Disclosure, GuideDraft, GuidePhoto, PlaceToBuy } from './guide.ts';

/** A guide as readers see it, as plain data: every text is plain text, every figure has its unit. Screens and files only dress it. */
export interface GuidePage {
  readonly id: string;
  readonly language: 'en';
  readonly title: string;
  readonly purpose: string;
  readonly whoItIsFor: string;
  readonly category: string;
  readonly publishedOn: Day;
  readonly builtOn: Day;
  readonly author: GuideDraft['author'];
  readonly disclosures: readonly Disclosure[];
  readonly rule: GuideRule;
  readonly settingsNotes: readonly { readonly title: string; readonly text: string }[];
  readonly sections: readonly GuideSection[];
  readonly nearly: readonly GuideEntry[];
  readonly leftOut: readonly { readonly reason: string; readonly count: number }[];
  /** Names of foods that fitted when the guide was published and by their newest label no longer do, or have no label any more. */
  readonly takenOff: readonly string[];
  readonly counts: GuideCounts;
  /** The first and last day on which a label of this guide was read; absent when no label tells its day. */
  readonly labelsRead?: { readonly from: Day; readonly to: Day };
  readonly cautions: readonly string[];
  readonly corrections: GuideDraft['corrections'];
}

/** `read` = fits + nearly + leftOut. */
export interface GuideCounts {
  readonly read: number;
  readonly fits: number;
  readonly nearly: number;
  readonly leftOut: number;
  /** Foods with a mark: changed, or due for another look. */
  readonly marked: number;
}

export interface GuideRule {
  /** "low in sodium as eaten". */
  readonly yardstick: string;
  /** "1 serving with two slices of low-sodium bread". */
  readonly plate: string;
  readonly setting?: string;
  /** One sentence a test, with bound, slack and source. */
  readonly tests: readonly string[];
  /** What the companions bring and what is left for the food; absent when no line between energy and sodium is drawn. */
  readonly allowance?: string;
  readonly line?: PlaneRule;
  readonly example?: WorkedExample;
}

export interface WorkedExample {
  readonly name: string;
  readonly rows: readonly { readonly what: string; readonly energy: string; readonly sodium: string }[];
  readonly outcome: string;
}

export interface GuideSection {
  readonly title: string;
  readonly entries: readonly GuideEntry[];
}

/** One maker's varieties that share a verdict, in one place of the arrangement; most entries have one variety. */
export interface GuideEntry {
  /** The food's name; the maker's where there are several varieties. */
  readonly title: string;
  /** Absent where the title is the maker. */
  readonly maker?: string;
  readonly varieties: readonly Variety[];
}

export interface Variety {
  readonly foodId: string;
  readonly name: string;
  readonly maker?: string;
  readonly verdict: VerdictWord;
  readonly closeCall: boolean;
  readonly estimated: boolean;
  /** "4 slices (56 g)". */
  readonly portion: string;
  readonly perPortion: readonly Figure[];
  readonly onPlate: readonly Figure[];
  /** "20 mg to spare", one a test with a number. */
  readonly margins: readonly string[];
  /** "Phosphate and potassium additives: none named on the label." */
  readonly additives: readonly string[];
  readonly waysIn: readonly string[];
  readonly readOn?: Day;
  readonly readAt?: string;
  readonly marks: readonly string[];
  readonly portionNote?: string;
  readonly photo?: GuidePhoto;
  readonly places: readonly GuidePlace[];
  /** "Free sample". */
  readonly disclosed: readonly string[];
  readonly bar?: MarginBar;
}

export interface GuidePlace extends PlaceToBuy {
  /** The link pays the author: said beside it. */
  readonly paysAuthor: boolean;
}

export interface Figure {
  readonly nutrient: Nutrient;
  /** "180 mg sodium", "phosphorus: not on the label". */
  readonly text: string;
  /** "180", "95–140", empty when not known. */
  readonly cell: string;
}

/** Where a food stands against its bound, as shares of the bound: 1 is the bound itself. */
export interface MarginBar {
  readonly value: number;
  readonly lo: number;
  readonly hi: number;
  readonly estimated: boolean;
}
