/** The tables, one interface each, in the names that SQL uses. Booleans are 0 and 1, JSON is text, on both engines alike. */
export interface Tables {
  workspace: WorkspaceTable;
  foods: FoodTable;
  labels: LabelTable;
  label_withdrawals: { label_id: string; reason: string; withdrawn_at: string };
  label_rechecks: { label_id: string; due_on: string };
  photos: { id: string; label_id: string; mime: string; sha256: string; bytes: Uint8Array };
  plates: { id: string; plate: string; version: number; is_demo: number };
  yardsticks: { id: string; yardstick: string; version: number };
  saved_surveys: { id: string; survey: string };
  handouts: { id: string; handout: string; version: number; is_demo: number };
  guides: { id: string; guide: string; published: string | null; version: number; is_demo: number };
  imports: { id: string; file_name: string; imported_at: string; added: number; joined: number; undone_at: string | null };
  import_labels: { import_id: string; label_id: string };
  mineral_estimates: { label_id: string; version: string; estimate: string };
  reference_tables: ReferenceTable;
}

/** An imported composition table; `digest` tells one body from another. */
export interface ReferenceTable {
  dataset: string;
  source: string;
  edition: string;
  foods: number;
  imported_at: string;
  digest: string;
  body: string;
}

/** One row: what holds for the workspace as a whole. */
export interface WorkspaceTable {
  id: number;
  schema_version: number;
  /** Grows with every write. */
  revision: number;
  /** Grows with every label: the order in which packages were read. */
  label_sequence: number;
  /** 1 inside the transaction that purges; the triggers let nothing be deleted otherwise. */
  is_purging: number;
}

export interface FoodTable {
  id: string;
  name: string;
  maker: string | null;
  category: string | null;
  gtin: string | null;
  density_g_per_ml: number | null;
  grams_per_measure: string | null;
  is_demo: number;
  version: number;
}

export interface LabelTable {
  id: string;
  food_id: string;
  kind: string;
  printed: string;
  corrects_label_id: string | null;
  reason: string | null;
  added_at: string;
  sequence: number;
  /** The sequence of the reading it belongs to: its own, or that of the label it corrects. */
  reading_sequence: number;
}
