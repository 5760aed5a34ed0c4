import type { AdditiveClass } from './additive.ts';
import { type AdditiveRow, additiveTable } from './additiveTable.ts';
import { cationOpen } from './lexicon.ts';
import type { Match } from './match.ts';

/** What one row means for one class. */
export interface ClassFacts {
  readonly id: string;
  readonly name: string;
  readonly ins: string | null;
  readonly class: AdditiveClass;
  readonly counts: boolean;
  /** The name hides whether the class is in it. */
  readonly possible: boolean;
  /** A mixture whose own bracket, when it lists something, is judged instead of its name. */
  readonly namesMixture: boolean;
  readonly why: string;
}

const byRow: ReadonlyMap<AdditiveRow, readonly ClassFacts[]> = new Map(additiveTable.map(row => [row, factsOf(row)]));

/** The classes of a match: none for look-alikes, up to three for a salt such as sodium potassium tripolyphosphate. */
export function classesOf(match: Match): readonly ClassFacts[] {
  if (match.row !== undefined) return byRow.get(match.row)!;
  return stemFacts(match);
}

function factsOf(row: AdditiveRow): ClassFacts[] {
  if (row.kind === 'look-alike') return [];
  const facts: ClassFacts[] = [];
  const base = { id: row.id, name: row.name, ins: row.ins, namesMixture: row.formula === null && row.kind === 'additive' };
  if (row.phosphate === 'inorganic')
    facts.push({
      ...base,
      class: 'phosphate',
      counts: true,
      possible: false,
      why: `${upper(row.name)}: adds inorganic phosphorus, counts as a phosphate additive.`,
    });
  if (row.phosphate === 'possible')
    facts.push({
      ...base,
      class: 'phosphate',
      counts: false,
      possible: true,
      why: `${upper(row.name)}: may hold a phosphate; the label does not say.`,
    });
  if (row.phosphate === 'organic')
    facts.push({
      ...base,
      class: 'phosphate',
      counts: false,
      possible: false,
      why: `${upper(row.name)}: organic phosphorus, reported, not counted as an added phosphate.`,
    });
  if (row.phosphate === 'trace')
    facts.push({
      ...base,
      class: 'phosphate',
      counts: false,
      possible: false,
      why: `${upper(row.name)}: a trace of phosphorus, reported, not counted.`,
    });
  if (row.potassium === 'matters')
    facts.push({
      ...base,
      class: 'potassium',
      counts: true,
      possible: false,
      why: `${upper(row.name)}: adds potassium in an amount that can matter.`,
    });
  if (row.potassium === 'trace')
    facts.push({
      ...base,
      class: 'potassium',
      counts: false,
      possible: false,
      why: `${upper(row.name)}: used in traces, its potassium is reported, not counted.`,
    });
  if (row.potassium === 'possible')
    facts.push({
      ...base,
      class: 'potassium',
      counts: false,
      possible: true,
      why: `${upper(row.name)}: may hold an added potassium salt; the label does not say.`,
    });
  if (row.potassium === 'natural')
    facts.push({
      ...base,
      class: 'potassium',
      counts: false,
      possible: false,
      why: `${upper(row.name)}: rich in potassium by nature, an ingredient, not an additive.`,
    });
  const sodium = sodiumFacts(row);
  if (sodium !== undefined) facts.push({ ...base, class: 'sodium', ...sodium });
  return facts;
}

function sodiumFacts(row: AdditiveRow): Pick<ClassFacts, 'counts' | 'possible' | 'why'> | undefined {
  if (row.sodium === 'none') return undefined;
  if (cationOpen.has(row.id))
    return { counts: false, possible: true, why: `${upper(row.name)}: may be sodium salts; the label does not say.` };
  if (row.kind === 'rich-ingredient')
    return {
      counts: false,
      possible: false,
      why: `${upper(row.name)}: an ingredient rich in sodium, not an additive; the panel measures it.`,
    };
  if (row.sodium === 'trace')
    return { counts: false, possible: false, why: `${upper(row.name)}: a trace of sodium, reported, not counted.` };
  return { counts: true, possible: false, why: `${upper(row.name)}: adds sodium, the panel measures how much.` };
}

function stemFacts(match: Match): ClassFacts[] {
  const name = match.stemName;
  const base = { id: `stem:${name.replaceAll(' ', '-')}`, name, ins: null, namesMixture: false, possible: false };
  const facts: ClassFacts[] = [];
  switch (match.stem) {
    case 'phosphate':
      facts.push({
        ...base,
        class: 'phosphate',
        counts: true,
        why: `${upper(name)} is not in the table; its name says phosphate, so it counts.`,
      });
      break;
    case 'phosphate-organic':
      facts.push({
        ...base,
        class: 'phosphate',
        counts: false,
        why: `${upper(name)} is an organic phosphate: reported, not counted as an added phosphate.`,
      });
      break;
    case 'phosphate-unread':
      facts.push({
        ...base,
        class: 'phosphate',
        counts: false,
        possible: true,
        why: `${upper(name)} looks like a phosphate and is not in the table: read the package again.`,
      });
      break;
    default:
  }
  if (match.stem === 'potassium' || (match.stem === 'phosphate' && /potassium/.test(name))) {
    facts.push({
      ...base,
      class: 'potassium',
      counts: true,
      why: `${upper(name)} is not in the table; its name says potassium, so it counts.`,
    });
  }
  if (match.stem === 'sodium' || (match.stem === 'phosphate' && /sodium/.test(name))) {
    facts.push({ ...base, class: 'sodium', counts: true, why: `${upper(name)} is not in the table; its name says sodium.` });
  }
  return facts;
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
