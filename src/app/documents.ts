import { isObject } from '#core/json/presentForm.ts';
import type { SavedSurvey } from '#core/yardstick/savedSurvey.ts';

/**
 * A person's own documents of one kind. Who changes one names the version that was seen, null for a new one; when it is no
 * longer that, nothing is written (`changed-meanwhile`).
 */
export interface Documents<
  Value extends DocumentFile,
  Kept extends Versioned<Value> = Versioned<Value>,
  More extends { readonly isDemo?: boolean } = { readonly isDemo?: boolean },
> {
  /** By id, without those that are damaged. */
  list(): Promise<readonly Kept[]>;
  /** Refuses one that is damaged (`plate-not-valid` and its like). */
  get(id: string): Promise<Kept | undefined>;
  /** Without `isDemo`, what belongs to the demo goes on belonging to it. */
  put(value: Value, seenVersion: number | null, more?: More): Promise<Kept>;
  /** Refuses one that is not there (`plate-not-found` and its like). */
  remove(id: string, seenVersion: number): Promise<void>;
}

/** Without `published`, what was published stays on record as it is; null takes it off. */
export type Guides = Documents<GuideFile, KeptGuide, { readonly published?: PublishedGuide | null; readonly isDemo?: boolean }>;

/** Without a mark of the demo. */
export type Surveys = Documents<SavedSurvey>;

/** A document as the JSON in which it is kept; the codec of whoever owns it reads it. */
export type DocumentFile = Readonly<Record<string, unknown>> & { readonly id: string };

/** A plate as docs/formats.md writes it: labels as printed, so that they are read by the program that opens them. */
export type PlateFile = DocumentFile;

/** A yardstick as docs/formats.md writes it. */
export type YardstickFile = DocumentFile;

export interface Versioned<Value> {
  readonly value: Value;
  readonly version: number;
  readonly isDemo: boolean;
}

/** A guide as docs/formats.md writes it; one that is still being written may not be valid yet. */
export type GuideFile = DocumentFile;

/** A handout on a topic as docs/formats.md writes it; one that is still being written may not be valid yet. */
export type HandoutFile = DocumentFile;

/** A label that a guide stood on when it was published. */
export interface PublishedLabel {
  readonly foodId: string;
  readonly labelId: string;
}

export interface KeptGuide extends Versioned<GuideFile> {
  /** Absent for a guide that was never published. */
  readonly published?: PublishedGuide;
}

/** What readers were given: the guide as it stood on that day, and the labels it stood on. */
export interface PublishedGuide {
  readonly guide: GuideFile;
  readonly labels: readonly PublishedLabel[];
}

/** Whether JSON is a document at all: what else it holds is for its codec. */
export function isDocument(json: unknown): json is DocumentFile {
  return isObject(json) && typeof json.id === 'string';
}
