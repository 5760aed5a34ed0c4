import type { GuideDraft } from './guide.ts';
import type { GuideEntry, GuideSection, Variety } from './guidePage.ts';

/** A food on its way into the page, with what it is put in order by. */
export interface Placed {
  readonly variety: Variety;
  readonly margin: number | undefined;
}

/** Made once: 300 foods are compared some thousand times. */
const alphabet = new Intl.Collator('en', { numeric: true });

/**
 * Sections as a shopper walks: by aisle in the order of `aisles`, those not named there by name, foods without an aisle last; or
 * one section by maker, or by margin, most to spare first. Within a section the varieties of a maker that share a verdict are one entry.
 */
export function arranged(
  foods: readonly Placed[],
  { arrangement, aisles }: Pick<GuideDraft, 'arrangement' | 'aisles'>,
): readonly GuideSection[] {
  if (foods.length === 0) return [];
  if (arrangement === 'maker') return [{ title: 'By maker', entries: entriesOf(foods, byMaker) }];
  if (arrangement === 'margin') return [{ title: 'Most to spare first', entries: entriesOf(foods, byMargin) }];
  const byAisle = Map.groupBy(foods, ({ variety }) => variety.places[0]?.aisle ?? '');
  const rank = (aisle: string): number => {
    if (aisle === '') return aisles.length + 1;
    const at = aisles.indexOf(aisle);
    return at < 0 ? aisles.length : at;
  };
  return [...byAisle]
    .sort(([a], [b]) => rank(a) - rank(b) || alphabet.compare(a, b))
    .map(([aisle, here]) => ({ title: aisle === '' ? noAisle(byAisle.size) : aisle, entries: entriesOf(here, byTitle) }));
}

function noAisle(groups: number): string {
  return groups === 1 ? 'All foods' : 'Aisle not noted';
}

interface OrderedEntry {
  readonly entry: GuideEntry;
  readonly margin: number;
}

function entriesOf(foods: readonly Placed[], order: (a: OrderedEntry, b: OrderedEntry) => number): readonly GuideEntry[] {
  const folds = Map.groupBy(foods, ({ variety: { maker, verdict, foodId } }) =>
    maker === undefined ? `food ${foodId}` : `maker ${maker.trim().toLowerCase()} ${verdict}`,
  );
  return [...folds.values()]
    .map(foldedEntry)
    .sort(order)
    .map(({ entry }) => entry);
}

function foldedEntry(foods: readonly Placed[]): OrderedEntry {
  const varieties = foods.map(({ variety }) => variety).sort((a, b) => alphabet.compare(a.name, b.name) || (a.foodId < b.foodId ? -1 : 1));
  const margin = Math.max(...foods.map(one => one.margin ?? Number.NEGATIVE_INFINITY));
  const [{ name, maker }] = varieties as [Variety];
  if (varieties.length > 1 && maker !== undefined) return { entry: { title: maker, varieties }, margin };
  return { entry: { title: name, ...(maker === undefined ? {} : { maker }), varieties }, margin };
}

function byTitle({ entry: a }: OrderedEntry, { entry: b }: OrderedEntry): number {
  return alphabet.compare(a.title, b.title) || alphabet.compare(a.maker ?? '', b.maker ?? '') || (firstId(a) < firstId(b) ? -1 : 1);
}

function byMaker(a: OrderedEntry, b: OrderedEntry): number {
  return alphabet.compare(a.entry.varieties[0]!.maker ?? '\uffff', b.entry.varieties[0]!.maker ?? '\uffff') || byTitle(a, b);
}

function byMargin(a: OrderedEntry, b: OrderedEntry): number {
  return (b.margin === a.margin ? 0 : b.margin - a.margin) || byTitle(a, b);
}

function firstId({ varieties }: GuideEntry): string {
  return varieties[0]!.foodId;
}
