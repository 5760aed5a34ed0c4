import type { AddedNutrient } from '#core/client/assessment/amountsTaken.ts';
import { type ClientFacts, has, takes } from '#core/client/assessment/clientFacts.ts';
import { medicines } from '#core/client/assessment/vocabularies.ts';
import type { Source } from '#core/client/rules/source.ts';
import { commonPractice, fromMemory, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { addedADay, amountWords } from '#core/client/states/eaten.ts';
import { potassiumBinderSodium, potassiumBinderWords } from '#core/client/states/potassiumBinding.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { sessionsInDate } from '#core/client/states/sessions.ts';
import { binderCalcium, binderWords, mayHoldCalcium } from '#core/client/states/takenBinders.ts';
import { add, type Interval, zero } from '#core/quantity/interval.ts';
import { type Target, type TargetItem, withheld } from './target.ts';

type Beside = readonly [says: string, source: Source];
type Targets = Readonly<Record<TargetItem, Target>>;

const memory = fromMemory(commonPractice);
const drugLabel: Source = { kind: 'regulation', text: 'US labels of the potassium binders', secondHand: true };
const absorbed: Source = { kind: 'paper', text: 'Ren Replace Ther 2017 (s41100-017-0095-x), Table 1' };

/**
 * Targets with what the client takes, eats and has beside them told: what binders, supplements and feeds bring of a figure, and how a way of
 * eating bears on it. No range moves by it, so that nothing gets stricter by a fact that is there or missing. Two figures are given up: fiber
 * with a slow stomach, and potassium and phosphorus of food for who is short of food.
 */
export function withBeside(facts: ClientFacts, targets: Targets): Targets {
  const told = (item: TargetItem, ...beside: readonly Beside[]) => ({ [item]: toldOf(targets[item], beside) });
  return {
    ...targets,
    ...told('energy', ...brought(facts, 'energyKcal', 'kcal', targets.energy)),
    ...told('protein', ...brought(facts, 'proteinG', 'g', targets.protein), ...aboutProtein(facts)),
    ...told('sodium', ...aboutSodium(facts, targets.sodium)),
    potassium: shortOfFood(
      facts,
      toldOf(targets.potassium, [...brought(facts, 'potassiumMg', 'mg', targets.potassium), ...aboutPotassium(facts)]),
    ),
    phosphorus: shortOfFood(
      facts,
      toldOf(targets.phosphorus, [...brought(facts, 'phosphorusMg', 'mg', targets.phosphorus), ...aboutPhosphorus(facts)]),
    ),
    ...told('calcium', ...aboutCalcium(facts, targets.calcium)),
    ...told('fluid', ...brought(facts, 'fluidMl', 'mL', targets.fluid), ...aboutFluid(facts)),
    fiber: slowStomach(facts, targets.fiber),
  };
}

function toldOf(target: Target, beside: readonly Beside[]): Target {
  if (beside.length === 0) return target;
  const says = beside.map(([words]) => words);
  const sources = [...target.sources, ...beside.map(([, source]) => source).filter(one => !target.sources.includes(one))];
  return target.kind === 'withheld'
    ? { ...target, sources, why: [target.why, ...says].join(' ') }
    : { ...target, sources, reasons: [...target.reasons, ...says] };
}

/** What supplements, feeds and meals on dialysis bring of a target, the mean of a week. That nobody knows how much is told beside a figure alone. */
function brought(facts: ClientFacts, nutrient: AddedNutrient, unit: string, target: Target): readonly Beside[] {
  const added = addedADay(facts, nutrient);
  if (added === undefined || added.hi === 0 || (isUnknown(added) && target.kind !== 'proposed')) return [];
  return [[`Supplements and feeds bring ${ofAmount(added, unit, target.item)} a day, which are part of the whole day’s.`, ownRule]];
}

function isUnknown({ lo, hi }: Interval): boolean {
  return lo < 0.5 && hi === Number.POSITIVE_INFINITY;
}

function ofAmount(amount: Interval, unit: string, words: string): string {
  return isUnknown(amount) ? `an amount of ${words} that is not known` : `${amountWords(amount, unit)} of ${words}`;
}

function isPlantBased(facts: ClientFacts): boolean {
  return has(facts, 'vegetarian-eating', 'vegan-eating');
}

function aboutProtein(facts: ClientFacts): readonly Beside[] {
  return [
    ...(isPlantBased(facts)
      ? [
          [
            'Plant-based eating does not change the figure: beans and grain on the same day complete each other.',
            fromMemory(kdoqi2020('OPINION')),
          ] as const,
        ]
      : []),
    ...(has(facts, 'bariatric-surgery')
      ? [['After bariatric surgery 60 g a day and more are usual: ask the surgical team before less is set.', memory] as const]
      : []),
  ];
}

function aboutSodium(facts: ClientFacts, target: Target): readonly Beside[] {
  const sodium = potassiumBinderSodium(facts);
  const names = potassiumBinderWords(facts, 'sodium-zirconium-cyclosilicate', 'sodium-polystyrene-sulfonate');
  return [
    ...brought(facts, 'sodiumMg', 'mg', target),
    ...(names === undefined
      ? []
      : [
          [
            `Beside food ${names} brings ${ofAmount(sodium, 'mg', 'sodium')} a day; whether and how it counts is for the prescriber.`,
            drugLabel,
          ] as const,
        ]),
    ...(has(facts, 'short-of-food')
      ? [['Short of food: canned food may be what there is; ask first, and have it drained and rinsed.', ownRule] as const]
      : []),
  ];
}

function aboutPotassium(facts: ClientFacts): readonly Beside[] {
  const names = potassiumBinderWords(facts);
  const diuretics = (['loop-diuretic', 'thiazide-diuretic', 'diuretic'] as const).filter(one => takes(facts, one));
  return [
    ...(names === undefined
      ? []
      : [[`With ${names} on record the result is one with the binder: it lifts no limit and sets none by itself.`, ownRule] as const]),
    ...(potassiumState(facts).kind === 'low' && diuretics.length > 0
      ? [
          [
            `On record: ${diuretics.map(medicines.words).join(', ')}, which can lower potassium; its dose is the prescriber’s.`,
            memory,
          ] as const,
        ]
      : []),
    ...(isPlantBased(facts)
      ? [['Plant-based eating alone is no reason to limit potassium: the blood result decides.', ownRule] as const]
      : []),
  ];
}

function aboutPhosphorus(facts: ClientFacts): readonly Beside[] {
  return isPlantBased(facts)
    ? [
        [
          'Of phosphorus in plants 20 to 40 % is absorbed, in animal foods 40 to 60 %: the figure of a plant-based day weighs less.',
          absorbed,
        ],
      ]
    : [];
}

function aboutCalcium(facts: ClientFacts, target: Target): readonly Beside[] {
  const binders = binderCalcium(facts);
  const names = binderWords(facts, mayHoldCalcium);
  const added = addedADay(facts, 'calciumMg');
  const isTicked = facts.assessment.supplements.includes('calcium');
  const isBinder = binders !== undefined && binders.hi > 0 && names !== undefined;
  const all = add(binders ?? zero, added ?? zero);
  if (!isBinder && (added === undefined || added.hi === 0)) return [];
  const lines: Beside[] = [
    ...(isBinder ? [[`Binders (${names}) bring ${ofAmount(binders, 'mg', 'calcium')} a day.`, byFormula] as const] : []),
    ...brought(facts, 'calciumMg', 'mg', target),
  ];
  // What is left for food is known where all of the rest is.
  if (target.kind === 'proposed') {
    const left = Math.round(target.range.hi - all.lo);
    if (left <= 0)
      lines.push([
        `That is the whole of ${target.range.hi} mg before any food: binders and supplements are for the prescriber to look at.`,
        ownRule,
      ]);
    else if (Number.isFinite(all.hi) && !isTicked) lines.push([`Up to ${left} mg of it are left for food.`, ownRule]);
    else lines.push(['What is left for food is not known: ask for strength and number.', ownRule]);
  }
  return lines;
}

const byFormula: Source = { kind: 'definition', text: 'calcium by formula and IUPAC 2021 atomic weights' };

function aboutFluid(facts: ClientFacts): readonly Beside[] {
  const [newest] = sessionsInDate(facts).filter(({ gainKg }) => gainKg !== undefined);
  const percent = newest?.gainPercent === undefined ? '' : `, ${newest.gainPercent.toFixed(1)} % of the dry weight`;
  return [
    ...(newest?.gainKg === undefined
      ? []
      : [[`Gain before the treatment of ${newest.on}: ${newest.gainKg.toFixed(1)} kg${percent}.`, commonPractice] as const]),
    ...(has(facts, 'swallowing-difficulty') ? [['Thickened drinks count as fluid.', ownRule] as const] : []),
  ];
}

/** Fiber slows a stomach that empties slowly: no figure without the team. From memory. */
function slowStomach(facts: ClientFacts, target: Target): Target {
  if (!has(facts, 'gastroparesis')) return target;
  return withheld(
    'fiber',
    'slow stomach',
    'Gastroparesis: fiber stays in the stomach longer, and the general figure may be too much.',
    ['How much fiber is tolerated, with the team.'],
    [memory],
  );
}

/** No figure takes cheap food away before somebody asked what there is to eat; the figure stays in sight, to be signed after that. Own decision. */
function shortOfFood(facts: ClientFacts, target: Target): Target {
  if (!has(facts, 'short-of-food') || target.kind !== 'proposed' || target.limit === 'at-least') return target;
  const { says, range, limit, perKg, sources, toBeConfirmed } = target;
  const figure = { says, range, limit, sources, toBeConfirmed, ...(perKg === undefined ? {} : { perKg }) };
  return withheld(
    target.item,
    'short of food: ask first',
    `Short of food: a figure may take away what there is to eat. ${target.reasons.join(' ')}`,
    ['Which foods are within reach, and what helps to get others: then a figure.'],
    [ownRule, ...sources],
    [figure, ...target.alternatives],
  );
}
