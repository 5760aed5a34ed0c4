import type { AdditiveClass, AdditiveFinding } from '#core/additive/additive.ts';
import type { ReadLabel } from '#core/label/label.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { type KinPresence, kinFinder, kinTitle } from './ingredientKin.ts';
import { isNumberMeasure } from './measures/measureFacts.ts';
import type { Served } from './served.ts';
import { sourceText } from './sourceText.ts';
import type { Found, Test, TestVerdict, VerdictWord } from './yardstick.ts';

/** What one label says of an additive class or an ingredient. `words` are told to the person. */
interface Presence {
  readonly verdict: Extract<VerdictWord, 'fits' | 'over' | "can't tell">;
  /** Missing where nothing was found. */
  readonly how?: Found['how'];
  readonly words: string;
}

type PresenceOn = (label: ReadLabel) => Presence;

/**
 * Makes the judge of an absence test. Named or misspelled is over; only allowed, hidden, or without a (whole) statement
 * is can't tell; else "none named on the label": what a statement does not name may still be in the food.
 */
export function absenceJudge(test: Test): (served: Served) => TestVerdict {
  const { measure } = test;
  if (isNumberMeasure(measure)) throw new RangeError(`test ${test.id} is no absence test`);
  const title = measure.kind === 'additive' ? additiveTitles[measure.class] : kinTitle(measure.kin);
  const presenceOn = measure.kind === 'additive' ? additivePresence(measure.class) : ingredientPresence(measure.kin);
  const source = sourceText(test.source);
  return served => {
    const foods = foodsOf(test, served);
    const found = foods.map(food => ({ food, ...presenceOn(food.label) }));
    const deciding = found.find(one => one.verdict === 'over') ?? found.find(one => one.verdict === "can't tell");
    const verdict = deciding?.verdict ?? 'fits';
    const where = deciding && foods.length > 1 ? `${deciding.food.name}: ` : '';
    const lead = verdict === "can't tell" ? `Can't tell about ${title}` : title.charAt(0).toUpperCase() + title.slice(1);
    const why = `${lead}: ${where}${deciding?.words ?? 'none named on the label'} (${source}).`;
    const reason = verdict === "can't tell" ? { reason: `${title}: ${where}${deciding?.words}` } : {};
    const how = deciding?.how;
    const evidence = deciding === undefined || how === undefined ? {} : { found: { food: deciding.food.name, how, words: deciding.words } };
    return { testId: test.id, verdict, closeCall: false, estimated: false, ...reason, ...evidence, why };
  };
}

const additiveTitles: Readonly<Record<AdditiveClass, string>> = {
  phosphate: 'phosphate additives',
  potassium: 'added potassium salts',
  sodium: 'added salt and sodium',
};

function foodsOf({ basis }: Test, { surveyed, companions }: Served): readonly PlateFood[] {
  const parts = surveyed.map(({ part }) => part);
  return (basis === 'on-plate' ? [...parts, ...companions.parts] : parts).map(({ food }) => food);
}

function additivePresence(wanted: AdditiveClass): PresenceOn {
  return label => {
    const whole = wholeStatement(label);
    const ofClass = label.additives.filter(finding => finding.class === wanted);
    const named = ofClass.filter(isNamed);
    if (named.length > 0) return { verdict: 'over', how: 'named', words: `${named.map(findingText).join(', ')} named on the label` };
    const open = ofClass.filter(isOpen);
    if (open.length > 0) return { verdict: "can't tell", how: 'possible', words: open.map(openText).join('; ') };
    return whole ?? { verdict: 'fits', words: 'none named on the label' };
  };
}

function isNamed({ counts, certainty }: AdditiveFinding): boolean {
  return counts && (certainty === 'named' || certainty === 'misspelled');
}

/** Only allowed by the statement, or hidden by a name that does not say what is in it. */
function isOpen({ counts, certainty }: AdditiveFinding): boolean {
  return certainty === 'possible' || (counts && (certainty === 'alternative' || certainty === 'may-contain'));
}

function openText({ certainty, found, why }: AdditiveFinding): string {
  if (certainty === 'possible') return why.replace(/\.$/, '');
  return certainty === 'may-contain'
    ? `the label says it may contain “${found}”`
    : `“${found}” is one of several that the label leaves open`;
}

function findingText({ name, found, certainty }: AdditiveFinding): string {
  if (certainty === 'misspelled') return `${name} (misspelled “${found}”)`;
  return name.toLowerCase() === found.toLowerCase() ? name : `${name} (“${found}”)`;
}

function ingredientPresence(kin: string): PresenceOn {
  const find = kinFinder(kin);
  return label => {
    const { statement } = label;
    const whole = wholeStatement(label);
    if (statement === undefined) return whole ?? { verdict: "can't tell", how: 'unread', words: noStatement };
    const presence: KinPresence = find(statement);
    if (presence.kind === 'named') return { verdict: 'over', how: 'named', words: `“${presence.words}” named on the label` };
    if (presence.kind === 'unknown')
      return {
        verdict: "can't tell",
        how: 'word-not-known',
        words: 'the program does not know what else this word stands for: read the statement',
      };
    if (presence.kind === 'possible')
      return { verdict: "can't tell", how: 'possible', words: `“${presence.words}” on the label may hold or hide it` };
    return whole ?? { verdict: 'fits', words: 'none named on the label' };
  };
}

const noStatement = 'no ingredient statement has been read';

/** Undefined when there is a statement to its end; else why its silence proves nothing. */
function wholeStatement({ statement, issues }: ReadLabel): Presence | undefined {
  if (statement === undefined || statement.ingredients.length === 0) return { verdict: "can't tell", how: 'unread', words: noStatement };
  const isCut = issues.some(({ code }) => code === 'statement-cut-off' || code === 'text-too-long');
  return isCut ? { verdict: "can't tell", how: 'unread', words: 'the statement breaks off before its end' } : undefined;
}
