import type { MissingPart } from '#core/client/formulas/amputation.ts';
import type { EnteredHeight, EnteredWeight } from '#core/client/formulas/bodyUnits.ts';
import type { DialysateBag } from '#core/client/formulas/dialysateGlucose.ts';
import type { Sex } from '#core/client/formulas/egfr.ts';
import type { GfrCategory } from '#core/client/formulas/gfrCategory.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import type { Day } from '../calendarDay.ts';

export interface Dated<Value> {
  readonly value: Value;
  readonly on: Day;
}

/** A laboratory result as it came. The unit stays with it. */
export interface LabResult {
  readonly analyte: Analyte;
  readonly value: number;
  readonly unit: string;
  readonly takenOn: Day;
  /** Time of day "HH:MM", for a rise within hours. */
  readonly takenAt?: string;
  /** Ends of the laboratory's own range, in the same unit. They beat every table of ours. */
  readonly lowerNormal?: number;
  readonly upperNormal?: number;
  /** On dialysis: before or after the treatment; not known when missing, which on hemodialysis counts as before. */
  readonly drawn?: 'before-dialysis' | 'after-dialysis';
  /** The laboratory marked the sample: a potassium from it is an upper bound and never in range. */
  readonly hemolyzed?: true;
  /** The person has answered that value and unit are right, where the program asked. */
  readonly confirmed?: true;
}

/** What a weight is. Dry weight is the prescribed target after dialysis; `standard` is the NHANES II median that the dietitian looks up. */
export type WeightKind =
  | 'actual'
  | 'dry'
  | 'estimated-dry'
  | 'before-dialysis'
  | 'after-dialysis'
  | 'after-drain'
  | 'usual'
  | 'before-admission'
  | 'goal'
  | 'standard';

export interface Weighing {
  readonly weight: EnteredWeight;
  readonly kind: WeightKind;
  readonly on: Day;
  /** The person has answered that the unit is right. */
  readonly unitConfirmed?: true;
}

export type Treatment =
  | { readonly setting: 'ckd-not-on-dialysis'; readonly conservative?: true }
  | {
      readonly setting: 'hemodialysis';
      readonly place: 'in-center' | 'home';
      readonly startedOn?: Day;
      readonly sessionsPerWeek?: number;
      readonly sessionHours?: number;
      /** Agreed by the team; with hours and gap it gives another fluid allowance. */
      readonly ultrafiltrationLimitMlPerKgH?: number;
    }
  | {
      readonly setting: 'peritoneal-dialysis';
      readonly method: 'capd' | 'apd';
      readonly startedOn?: Day;
      readonly bags?: readonly DialysateBag[];
      readonly icodextrin?: true;
      /** Absorbed share of the glucose where it is known, else the method's. */
      readonly absorbedShare?: number;
    }
  | { readonly setting: 'transplant'; readonly transplantedOn: Day };

export type Condition =
  | 'edema'
  | 'ascites'
  | 'nephrotic-syndrome'
  | 'overload'
  | 'hypertension'
  | 'hypotension'
  | 'heart-failure'
  | 'salt-losing-kidney-disease'
  | 'ileostomy'
  | 'calcium-oxalate-stones'
  | 'frail'
  | 'sarcopenia'
  | 'acute-illness'
  | 'critically-ill'
  | 'alcohol-misuse'
  | 'metabolically-unstable'
  | 'peritonitis'
  | 'in-hospital'
  | 'new-feeding'
  | 'fasting-for-faith'
  | 'low-carbohydrate-diet';

export type MedicineClass =
  | 'raas-inhibitor'
  | 'mineralocorticoid-antagonist'
  | 'potassium-sparing-diuretic'
  | 'tacrolimus'
  | 'ciclosporin'
  | 'sirolimus-or-everolimus'
  | 'other-immunosuppressant'
  | 'high-dose-steroid'
  | 'vitamin-k-antagonist'
  | 'digoxin'
  | 'trimethoprim'
  | 'heparin'
  | 'nsaid'
  | 'non-selective-beta-blocker'
  | 'phosphate-binder'
  | 'active-vitamin-d'
  | 'calcimimetic'
  | 'ketoanalogs'
  | 'sglt2-inhibitor'
  | 'insulin-or-sulfonylurea'
  | 'insulin'
  | 'diuretic'
  | 'chemotherapy'
  | 'potassium-salt';

export type SupplementClass =
  | 'herbal'
  | 'salt-substitute'
  | 'high-dose-vitamin-c'
  | 'vitamin-a'
  | 'vitamin-k'
  | 'magnesium-or-aluminum-antacid'
  | 'creatine'
  | 'sports-or-slimming-product'
  | 'protein-powder'
  | 'calcium';

export type Symptom =
  | 'palpitations'
  | 'weakness'
  | 'ecg-change'
  | 'swelling'
  | 'breathlessness'
  | 'missed-or-shortened-session'
  | 'ketones'
  | 'cloudy-drain'
  | 'abdominal-pain'
  | 'fever'
  | 'vomiting'
  | 'diarrhea'
  | 'missed-doses'
  | 'constipation';

/** A dated set of facts about a client. What is not known is left out, never filled in. */
export interface Assessment {
  readonly on: Day;
  readonly sex: Sex;
  readonly age: { readonly bornOn: Day } | { readonly years: number };
  readonly treatment: Treatment;
  readonly diabetes: boolean;
  readonly acuteKidneyInjury?: boolean;
  readonly pregnant?: boolean;
  readonly breastfeeding?: boolean;
  /** The stage that the kidney team has set, for CKD not on dialysis and transplants. */
  readonly stage?: Dated<GfrCategory>;
  readonly height?: EnteredHeight;
  readonly weighings: readonly Weighing[];
  readonly missingParts?: readonly MissingPart[];
  readonly urineMlPerDay?: Dated<number>;
  readonly labs: readonly LabResult[];
  readonly conditions: readonly Condition[];
  readonly medicines: readonly MedicineClass[];
  /** When a RAAS inhibitor was begun or changed. */
  readonly raasChangedOn?: Day;
  readonly supplements: readonly SupplementClass[];
  readonly symptoms: readonly Symptom[];
  readonly allergies: readonly string[];
  readonly avoidedFoods: readonly string[];
  readonly appetite?: 'good' | 'fair' | 'poor';
  /**
   * Loss of weight in percent, 0 to 50; a gain is left out. `cause` says whether it was wanted or fluid, typed or computed from recorded weights:
   * without it that is asked.
   */
  readonly weightLoss?: {
    readonly percent3Months?: number;
    readonly percent6Months?: number;
    readonly cause?: 'unintended' | 'wanted' | 'fluid';
  };
  readonly muscleLoss?: { readonly percent3Months?: number; readonly percent6Months?: number };
  /** What is eaten, as told or from urine: a day's energy and protein, and for how many days next to nothing. */
  readonly intake?: { readonly energyKcal?: number; readonly proteinG?: number; readonly littleForDays?: number };
  readonly foodAccess?: string;
  readonly goals: readonly string[];
  /** High potassium: when the other causes were gone through, and when additives, salt substitutes, juices and portions were. */
  readonly potassiumSteps?: { readonly causesCheckedOn?: Day; readonly additivesCutOn?: Day };
  readonly lastScreenedOn?: Day;
  readonly lastFullAssessmentOn?: Day;
}
