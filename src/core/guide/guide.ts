import type { ReadLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { WayIn } from '#core/yardstick/wayIn.ts';
import type { Setting, Verdict, Yardstick } from '#core/yardstick/yardstick.ts';

export type Arrangement = 'shelf' | 'maker' | 'margin';

/** What the author of a guide writes; docs/formats.md holds the JSON. What can be computed is not in it. */
export interface GuideDraft {
  /** Small letters, digits and hyphens: it names the files. */
  readonly id: string;
  readonly language: 'en';
  readonly title: string;
  readonly purpose: string;
  readonly whoItIsFor: string;
  readonly publishedOn: Day;
  readonly survey: GuideSurveyControls;
  /** What differs for readers of each setting. */
  readonly settingsNotes: Readonly<Partial<Record<Setting, string>>>;
  readonly arrangement: Arrangement;
  /** Aisles in the order of a walk through the shop. */
  readonly aisles: readonly string[];
  /** By food id: how to measure its portion. */
  readonly portionNotes: Readonly<Record<string, string>>;
  readonly whereToBuy: Readonly<Record<string, readonly PlaceToBuy[]>>;
  /** By food id: a small picture of the package. */
  readonly photos: Readonly<Record<string, GuidePhoto>>;
  readonly leftOut: readonly { readonly foodId: string; readonly reason: string }[];
  readonly author: { readonly name: string; readonly credentials?: string };
  readonly disclosures: readonly Disclosure[];
  readonly cautions: readonly string[];
  readonly corrections: readonly { readonly on: Day; readonly text: string }[];
  /** Days from the reading of a label until it is due for another look. */
  readonly recheckAfterDays: number;
}

export interface GuideSurveyControls {
  readonly category: string;
  readonly plateId: string;
  readonly yardstickId: string;
  readonly setting?: Setting;
  readonly switchedOn: readonly string[];
  /** Servings in the place of the plate's portion. */
  readonly servings?: number;
}

export interface PlaceToBuy {
  readonly shop: string;
  readonly aisle?: string;
  /** http or https. */
  readonly url?: string;
  readonly price?: string;
  readonly priceOn?: Day;
}

/** A picture that travels inside the guide, so that a page stays one file. */
export interface GuidePhoto {
  /** `data:image/jpeg;base64,…`; JPEG, PNG or WebP, at most `largestPhoto` characters. */
  readonly dataUrl: string;
  /** What the picture shows, for readers who do not see it. */
  readonly alt: string;
}

/** 100 kB of picture in base64. */
export const largestPhoto = 136_000;

/** A connection that readers have to be told of, near the place it bears on (16 CFR 255.5). */
export interface Disclosure {
  readonly kind: 'affiliate' | 'free-sample' | 'sponsorship' | 'none';
  readonly text: string;
  /** Whose links pay the author. */
  readonly shops?: readonly string[];
  /** Food ids that were given or paid for. */
  readonly foods?: readonly string[];
}

/** A category judged on a plate: what a guide is made from. */
export interface GuideSurvey {
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  readonly foods: readonly GuideSurveyFood[];
}

export interface GuideSurveyFood {
  readonly food: PlateFood;
  readonly verdict: Verdict;
  readonly waysIn?: { readonly ways: readonly Pick<WayIn, 'what'>[]; readonly none?: string };
}

export interface GuideInput {
  readonly draft: GuideDraft;
  readonly survey: GuideSurvey;
  /** The day of the build; the core has no clock. */
  readonly today: Day;
  /** By food id: the label that stood when the guide was published, where it is another one than the surveyed. */
  readonly asPublished?: ReadonlyMap<string, ReadLabel>;
  /** Foods that were judged when the guide was published and have no label any more, with the label of that day. */
  readonly gone?: readonly PlateFood[];
  /** By food id: the day to read the label again, where somebody has set one. */
  readonly recheckOn?: ReadonlyMap<string, Day>;
}
