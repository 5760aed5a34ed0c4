import { onPlate } from '#core/plate/plateAmounts.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { additiveWords } from './additiveWords.ts';
import { marginBarOf, marginWords } from './againstBound.ts';
import { portionFigures, portionWords, totalFigure } from './figures.ts';
import type { Disclosure, GuideInput, GuideSurveyFood, PlaceToBuy } from './guide.ts';
import type { GuidePlace, Variety } from './guidePage.ts';
import { staleMarks } from './marks.ts';

/** Everything that a guide tells of one food: what is computed from its label, and what the author wrote of it. */
export function varietyOf(surveyed: GuideSurveyFood, { draft, survey, today, asPublished, recheckOn }: GuideInput): Variety {
  const { food, verdict, waysIn } = surveyed;
  const { maker, readOn, readAt } = food.label.printed;
  const tests = testsJudged(survey.yardstick, draft.survey.switchedOn);
  const bar = marginBarOf(tests, surveyed, survey.plate);
  const portionNote = ownEntry(draft.portionNotes, food.id);
  const photo = ownEntry(draft.photos, food.id);
  const before = asPublished?.get(food.id);
  const recheck = recheckOn?.get(food.id);
  return {
    foodId: food.id,
    name: food.name,
    ...(maker === undefined ? {} : { maker }),
    verdict: verdict.verdict,
    closeCall: verdict.closeCall,
    estimated: verdict.estimated,
    portion: portionWords(food, survey.plate.portion),
    perPortion: portionFigures(food, survey.plate.portion),
    onPlate: (['energyKcal', 'sodiumMg'] as const).map(nutrient => totalFigure(nutrient, onPlate(survey.plate, food, nutrient))),
    margins: marginWords(tests, verdict),
    additives: additiveWords(food.label),
    waysIn:
      waysIn === undefined ? [] : waysIn.ways.length > 0 ? waysIn.ways.map(({ what }) => what) : [waysIn.none ?? 'No way in was found.'],
    ...(readOn === undefined ? {} : { readOn }),
    ...(readAt === undefined ? {} : { readAt }),
    marks: staleMarks({
      label: food.label,
      draft,
      today,
      ...(before === undefined ? {} : { asPublished: before }),
      ...(recheck === undefined ? {} : { recheckOn: recheck }),
    }),
    ...(portionNote === undefined ? {} : { portionNote }),
    ...(photo === undefined ? {} : { photo }),
    places: (ownEntry(draft.whereToBuy, food.id) ?? []).map(place => disclosedPlace(place, draft.disclosures)),
    disclosed: draft.disclosures.filter(({ foods }) => foods?.includes(food.id)).map(({ kind }) => disclosureWords[kind]),
    ...(bar === undefined ? {} : { bar }),
  };
}

/** A food may be called "constructor": only what the author wrote counts. */
function ownEntry<Value>(record: Readonly<Record<string, Value>>, key: string): Value | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}

const disclosureWords: Readonly<Record<Disclosure['kind'], string>> = {
  affiliate: 'Paid links',
  'free-sample': 'The author was given this food free',
  sponsorship: 'The maker paid the author',
  none: 'Nothing to disclose',
};

/** A link pays the author where a disclosure of affiliate links names its shop, or names no shop at all. */
function disclosedPlace(place: PlaceToBuy, disclosures: readonly Disclosure[]): GuidePlace {
  const named = (shops: readonly string[]) => shops.some(shop => shop.trim().toLowerCase() === place.shop.trim().toLowerCase());
  const pays = ({ kind, shops }: Disclosure) => kind === 'affiliate' && (shops === undefined || named(shops));
  return { ...place, paysAuthor: place.url !== undefined && disclosures.some(pays) };
}
