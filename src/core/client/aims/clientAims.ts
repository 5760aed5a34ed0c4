import type { AimStates } from './aimStates.ts';
import { type FoodTarget, isMost, isNeed } from './limitKind.ts';

/** What foods are picked for, the gravest first (own decision): what can harm in a day, then in weeks, then in months, then what is only a need. */
export const aimKinds = [
  'safe-to-eat',
  'less-potassium',
  'more-potassium',
  'no-potassium-additive',
  'eat-enough',
  'less-fluid',
  'less-phosphorus',
  'more-phosphorus',
  'no-phosphate-additive',
  'more-energy',
  'more-protein',
  'more-fluid',
] as const;

export type AimKind = (typeof aimKinds)[number];

/** What an aim asks of a food, as data: the room of foods knows how it is measured. */
export type Criterion =
  | { readonly kind: 'safe-as-eaten' }
  | { readonly kind: 'no-additive'; readonly class: 'phosphate' | 'potassium' }
  | { readonly kind: 'amount'; readonly of: AimedAmount; readonly wanted: 'least' | 'most' };

export type AimedAmount = 'potassiumMg' | 'phosphorusMg' | 'energyKcal' | 'proteinG' | 'fluidMl';

export interface ClientAim {
  readonly kind: AimKind;
  /** `signed`: a target of the prescription; `record`: what the checked assessment shows. */
  readonly from: 'signed' | 'record';
  readonly criteria: readonly Criterion[];
}

export interface AimedClient {
  readonly targets: readonly FoodTarget[];
  /** The immune system is held down. */
  readonly isSuppressed: boolean;
  /** Missing where only the prescription is known. */
  readonly states?: AimStates;
}

/**
 * Why this client came, as far as food can serve it: from the signed targets and the checked assessment, the gravest first. What is
 * signed stands before what the record shows: a signed need for phosphorus is never turned into least phosphorus by an old high result.
 * No aim comes of a carbohydrate: the sheets name none.
 */
export function clientAims({ targets, isSuppressed, states = {} }: AimedClient): readonly ClientAim[] {
  const found: ClientAim[] = [];
  const add = (kind: AimKind, from: ClientAim['from'], ...criteria: readonly Criterion[]) => found.push({ kind, from, criteria });
  const has = (item: FoodTarget['item'], holds: (target: FoodTarget) => boolean) => targets.some(one => one.item === item && holds(one));
  const isNoneSigned = (item: FoodTarget['item']) => has(item, ({ range }) => range?.hi === 0);

  if (isSuppressed) add('safe-to-eat', 'record', { kind: 'safe-as-eaten' });
  for (const { item, state, additives, additive, of, less, more, none } of minerals) {
    const withoutAdditive: Criterion = { kind: 'no-additive', class: additive };
    const level = states[state];
    if (has(item, isMost)) add(less, 'signed', withoutAdditive, amount(of, 'least'));
    else if (has(item, isNeed)) add(more, 'signed', ...(isNoneSigned(additives) ? [withoutAdditive] : []), amount(of, 'most'));
    else if (level === 'food') add(less, 'record', withoutAdditive, amount(of, 'least'));
    else if (level === 'low') add(more, 'record', amount(of, 'most'));
    else if (isNoneSigned(additives)) add(none, 'signed', withoutAdditive);
    else if (level === 'additives') add(none, 'record', withoutAdditive);
  }
  const food = (['energy', 'protein'] as const).filter(item => !has(item, isCeiling));
  if (states.isWasting === true && food.length > 0) add('eat-enough', 'record', ...food.map(item => amount(amountOf[item], 'most')));
  else
    for (const item of food)
      if (has(item, isNeed)) add(item === 'energy' ? 'more-energy' : 'more-protein', 'signed', amount(amountOf[item], 'most'));
  if (has('fluid', isMost)) add('less-fluid', 'signed', amount('fluidMl', 'least'));
  else if (has('fluid', isNeed)) add('more-fluid', 'signed', amount('fluidMl', 'most'));
  return found.sort((a, b) => aimKinds.indexOf(a.kind) - aimKinds.indexOf(b.kind));
}

const amountOf = { energy: 'energyKcal', protein: 'proteinG' } as const;

const minerals = [
  {
    item: 'potassium',
    state: 'potassium',
    additives: 'potassiumAdditives',
    additive: 'potassium',
    of: 'potassiumMg',
    less: 'less-potassium',
    more: 'more-potassium',
    none: 'no-potassium-additive',
  },
  {
    item: 'phosphorus',
    state: 'phosphate',
    additives: 'phosphateAdditives',
    additive: 'phosphate',
    of: 'phosphorusMg',
    less: 'less-phosphorus',
    more: 'more-phosphorus',
    none: 'no-phosphate-additive',
  },
] as const;

function amount(of: AimedAmount, wanted: 'least' | 'most'): Criterion {
  return { kind: 'amount', of, wanted };
}

/** A most alone. A range from 60 to 80 g has to be reached as well, and does not stand against eating enough. */
function isCeiling(target: FoodTarget): boolean {
  return isMost(target) && (target.limit === 'at-most' || target.limit === 'below');
}
