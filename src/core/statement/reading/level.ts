import type { Token } from '#core/statement/text/token.ts';
import type { Presence } from '../statement.ts';
import { type Draft, newDraft } from './draft.ts';
import { draftOf, plainDraft } from './draftOf.ts';
import { GrowingItem, type Item } from './item.ts';
import { readItem } from './readItem.ts';
import type { ReadState } from './readState.ts';

/** A name and its place: of a component, or of a group that a heading or clause opens. */
interface HeadingFacts {
  readonly name: string;
  readonly start: number;
  readonly end: number;
}
interface GroupFacts extends HeadingFacts {
  /** It holds the next ingredient only; else it goes on to the end of its sentence. */
  readonly takesOne: boolean;
  readonly outOfOrder: boolean;
  readonly isConditional?: boolean;
}

/** What is known while one bracket level, or the whole text, is being read. */
export class Level {
  /** The bracket that opened the level; undefined for the whole text. */
  readonly opened: Token | undefined;
  readonly depth: number;
  readonly list: Draft[] = [];
  /** The words and brackets since the last separator. */
  item = new GrowingItem();
  /** The percent of "contains 2% or less of", for all that follows on the level. */
  threshold: number | undefined = undefined;
  /** What "may contain" and "one or more of" make of the ingredients to the end of their sentence. */
  presence: Presence = 'certain';
  /** "One or more of the following" has just been read: the heading that may follow names the whole, "oils:". */
  awaitsChoiceName = false;
  private readonly state: ReadState;
  private component: Draft | undefined = undefined;
  private group: Draft | undefined = undefined;
  private groupTakesOne = false;
  /** How many of `alternativesIn` have been made alternatives, so that each is looked at once. */
  private alternatives = 0;
  private alternativesIn: readonly Draft[] | undefined = undefined;

  constructor(state: ReadState, opened: Token | undefined, depth: number) {
    this.state = state;
    this.opened = opened;
    this.depth = depth;
  }

  /** The list that the next ingredient goes to. */
  get target(): Draft[] {
    return this.group?.parts ?? this.component?.parts ?? this.list;
  }

  /** Reads the item that a separator, a clause or the end of the list has ended. */
  finishItem(endsList = false): void {
    const { item } = this;
    if (item.isEmpty) return;
    this.item = new GrowingItem();
    this.awaitsChoiceName = false;
    const into = this.target;
    if (item.isPlain && item.wordCount > 0) {
      this.add(into, plainDraft(this.state, item));
    } else {
      const read = readItem(this.state, item.gather(this.state.tokens), into.at(-1), endsList && into.length > 0);
      for (const draft of read.drafts) this.add(into, draft);
      if (read.endOfNote !== undefined) this.growTo(read.endOfNote);
      if (read.leadsWithOr && this.presence === 'certain') this.makeAlternatives(into);
      // "one or more of: corn, soy, or palm oil, salt": outside brackets the "or" names the last of them.
      if (read.leadsWithOr && this.presence === 'alternative' && this.depth === 0) this.closeSentence();
      if (read.drafts.length === 0) return;
    }
    if (this.groupTakesOne) this.closeGroup();
  }

  private add(into: Draft[], draft: Draft): void {
    draft.atMostPercent ??= this.threshold;
    if (this.presence !== 'certain') draft.presence = this.presence;
    into.push(draft);
    this.growTo(draft.end);
  }

  /** "(a, b, and/or c)": all of a bracket are alternatives; in the main list only the two that "or" joins. */
  private makeAlternatives(drafts: readonly Draft[]): void {
    const done = this.alternativesIn === drafts ? this.alternatives : 0;
    for (let index = this.depth > 0 ? done : Math.max(0, drafts.length - 2); index < drafts.length; index++) {
      const draft = drafts[index]!;
      if (draft.presence === 'certain') draft.presence = 'alternative';
    }
    this.alternativesIn = drafts;
    this.alternatives = drafts.length;
  }

  /** "May contain", "one or more of" and groups end with their sentence; thresholds and components go on. */
  closeSentence(): void {
    this.presence = 'certain';
    this.awaitsChoiceName = false;
    this.closeGroup();
  }

  closeGroup(): void {
    this.group = undefined;
    this.groupTakesOne = false;
  }

  openGroup({ name, start, end, takesOne, outOfOrder }: GroupFacts): Draft {
    const group = newDraft(name, start, end);
    group.kind = 'group';
    group.outOfOrder = outOfOrder;
    this.enterGroup(group, takesOne);
    return group;
  }

  /** A group of which holds what the clauses before it say. */
  openGroupInClause(facts: GroupFacts): void {
    const group = this.openGroup(facts);
    group.presence = facts.isConditional === true ? 'may-contain' : this.presence;
    group.atMostPercent = this.threshold;
  }

  /** "One or more of the following oils: …": the whole is there for certain, which of its parts is not. */
  openChoice(name: Item, isGroup: boolean): void {
    const whole = draftOf(this.state, name);
    if (isGroup) whole.kind = 'group';
    if (this.presence === 'may-contain') whole.presence = 'may-contain';
    whole.atMostPercent ??= this.threshold;
    for (const part of whole.parts) part.presence = this.presence;
    this.awaitsChoiceName = false;
    this.enterGroup(whole, false);
  }

  private enterGroup(group: Draft, takesOne: boolean): void {
    if (group.parts.length === 0) group.parts = [];
    this.closeGroup();
    this.target.push(group);
    this.group = group;
    this.groupTakesOne = takesOne;
    this.growTo(group.end);
  }

  openComponent({ name, start, end }: HeadingFacts): void {
    const component = newDraft(name, start, end);
    component.kind = 'component';
    component.parts = [];
    this.list.push(component);
    this.component = component;
    this.threshold = undefined;
    this.closeSentence();
  }

  /** "SALT (LESS THAN 2%)", "salt less than 2%.": the clause limits what stands before it. */
  limitLast(percent: number): void {
    const last = this.target.at(-1) ?? this.list.at(-1);
    if (last !== undefined) last.atMostPercent ??= percent;
  }

  private growTo(end: number): void {
    if (this.group !== undefined && end > this.group.end) this.group.end = end;
    if (this.component !== undefined && end > this.component.end) this.component.end = end;
  }
}
