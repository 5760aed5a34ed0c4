import type { AdditiveClass } from '#core/additive/additive.ts';
import { dayText } from '#core/guide/day.ts';
import { portionText } from '#core/plate/portionText.ts';
import { avoidedRun } from '../avoidedRun.ts';
import { figuresOf, line, lineOf, programLine } from '../line.ts';
import { aimsEn } from './aimsEn.ts';
import type { Asked, BasisWords, Words } from './words.ts';

const s = programLine;

function asked(one: Asked): string {
  if (one.kind === 'between') return `${one.lo} to ${one.hi}`;
  return { below: 'less than ', 'at-most': 'up to ', 'at-least': 'at least ', about: 'about ' }[one.kind] + one.figure;
}

const additive: Readonly<Record<AdditiveClass, string>> = { phosphate: 'phosphate', potassium: 'potassium', sodium: 'sodium' };

const basis: Readonly<Record<BasisWords, string>> = {
  serving: 'in one serving',
  portion: 'in the portion you eat',
  plate: 'in all that you eat with it',
  '100-g': 'in 100 g',
  '100-ml': 'in 100 mL',
  'reference-amount': 'in the amount that most people eat at one time',
  day: 'in a day',
};

/**
 * When to call and the cautions follow core/client/contactValues.ts and cautions.ts (common practice, hospital and kidney patient pages;
 * star fruit: Saudi J Kidney Dis Transpl 2017). The percent hint: 5 or less is low, 20 or more is high (US label rule, from memory).
 */
export const en: Words = {
  titleFor: {
    'ckd-not-on-dialysis': 'Food that is kind to your kidneys',
    hemodialysis: 'Food that fits with hemodialysis',
    'peritoneal-dialysis': 'Food that fits with peritoneal dialysis',
    transplant: 'Food that fits with your new kidney',
  },
  sectionTitle: {
    fridge: 'For your fridge',
    notes: 'From your dietitian',
    numbers: 'Your numbers',
    foods: 'Foods that fit',
    ask: 'Ask us first',
    labels: 'How to read a label',
    swaps: 'Swaps',
    shopping: 'Shopping list',
    call: 'When to call',
    cautions: 'Please note',
  },
  topicNumbersTitle: 'The rule on this page',
  forReader: name => line`For ${name}`,
  byAuthor: name => line`From ${name}`,
  settingLine: setting =>
    s(
      {
        'ckd-not-on-dialysis': 'For adults with kidney disease who are not on dialysis',
        hemodialysis: 'For adults on hemodialysis',
        'peritoneal-dialysis': 'For adults on peritoneal dialysis',
        transplant: 'For adults with a kidney transplant',
      }[setting],
    ),
  writtenOn: day => line`Written ${dayText(day)}`,

  targetNames: {
    energy: 'Calories',
    protein: 'Protein',
    sodium: 'Sodium',
    potassium: 'Potassium',
    phosphorus: 'Phosphorus',
    calcium: 'Calcium (food, pills and binders)',
    fluid: 'Fluid',
    fiber: 'Fiber',
    phosphateAdditives: 'Phosphate additives',
    potassiumAdditives: 'Potassium additives',
  },
  nutrientNames: { sodiumMg: 'sodium', potassiumMg: 'potassium', phosphorusMg: 'phosphorus', energyKcal: 'calories', proteinG: 'protein' },
  units: { kcal: 'kcal', g: 'g', mg: 'mg', mL: 'mL', 'named on the label': 'named on the label' },
  asked,
  fluidMeasures: ({ cups, isOneCup, ounces }) => `${cups} ${isOneCup ? 'cup' : 'cups'}, or ${ounces} fluid ounces`,
  askedHead: { below: 'less than', 'at-most': 'up to' },
  aDay: 'Each day',
  meal: name => name.charAt(0).toUpperCase() + name.slice(1),
  mealInSentence: name => name,
  numbersCaption: 'The most for a day and for each meal',
  whatColumn: 'When',
  dayTarget: (item, range) => line`${item}: ${range} a day.`,
  noneNamedTarget: kind => line`${kind === 'phosphate' ? 'Phosphate' : 'Potassium'} additives: none named on the label.`,
  ownNumbers: (signedOn, signer) => [
    line`These are your own numbers. They were signed on ${dayText(signedOn)} by ${signer}.`,
    s('Please do not give them to others. Each person needs their own.'),
  ],
  fluidCounts: s('Soup, milk, ice and gelatin count as fluid too.'),
  sharesOfDay: s(
    'Each meal has a share of the day. It is for all that is on your plate, not for one food. Eat less at one meal, and you have more room at the next.',
  ),
  noSodiumNumber: s('You have no number for sodium yet. Ask us how much salt is right for you.'),
  noNumbers: s('Your plan sets no number to keep below. Ask us if you are not sure.'),
  onlyTheTeam: s('No number here for potassium or phosphorus? Then do not set one on your own. Your blood tests tell us if you need it.'),

  sodiumRule: (most, on) => line`Sodium: ${most} ${basis[on]}.`,
  sodiumToEnergy: s('Look at all that you eat at once. The mg of sodium should not be more than the calories.'),
  companionRoom: (companions, more) => line`With ${companions}, the food may have as many mg of sodium as calories, and ${more} more.`,
  additiveRule: kind => line`No ${additive[kind]} additive is named on the label.`,
  ingredientRule: food => line`No ${food} is named on the label.`,
  otherRule: english => line`The rule we used: ${english}`,

  bestPicks: 'Best picks for a meal',
  lookFor: 'On the label',
  foodsIntro: [s('We read the labels of these foods. They fit if you keep to the portion.')],
  dayIsTheMost: s('The day portion is the very most. It leaves less room for the rest of your food.'),
  eatenWith: plate => line`The portion counts what you eat with it: ${plate}.`,
  forMeal: meal => line`Checked for ${meal}.`,
  noneNamedHere: kinds => [
    ...kinds.map(kind => line`${additive[kind].charAt(0).toUpperCase()}${additive[kind].slice(1)} additives: none named on the label.`),
    s('That is no proof that there are none.'),
  ],
  inAMeal: portion => `For a meal: ${portion}`,
  inADay: portion => `Most in a day: ${portion}`,
  portionOnly: portion => `Portion: ${portion}`,
  sodiumInIt: amount => `${amount} sodium`,
  notOnLabel: 'unknown',
  closeCall: 'Close to the limit: check the package',
  potassiumNamed: 'Potassium is added to it: ask us first',
  estimated: 'An estimate, not from the label alone',
  noneFits: s('We found no food here that fits. Ask us what to eat in its place.'),
  noneChecked: s('We have not checked any food of this kind yet. Ask us before you buy.'),
  nothingBounds: s('Your plan has no number that we could check these foods by. Ask us about them.'),

  askIntro: [s('We could not tell from the label if these fit. Ask us before you buy them.')],
  askWhy: (food, why) => {
    if (why.kind === 'nutrient') return line`${food}: the ${en.nutrientNames[why.nutrient] ?? 'amount'} is not known.`;
    if (why.kind === 'additive') return line`${food}: it may have a ${additive[why.class]} additive.`;
    if (why.kind === 'ingredient') return line`${food}: it may have ${avoidedRun(why.name, 'en')}.`;
    return line`${food}: the label does not tell us enough.`;
  },

  steps: {
    serving: s('Find “Serving size”. Do you eat twice as much? Then double each number on the label.'),
    numberOfClient: (item, day, meals) =>
      figuresOf(line`Find “${en.targetNames[item]}”. Your day is ${day}. Keep to the number of the meal:`, meals),
    notPrinted: s('Is it not on the label? Then it is not known. Ask us.'),
    sodiumOfTopic: s('Find “Sodium”. Keep to the rule at the top of this page.'),
    percent: s('Look at the “% Daily Value” of sodium. 5% or less is low. 20% or more is high. Your own number comes first.'),
    ingredients: s('Now read “Ingredients”. Read to the end. The small print counts too.'),
    phosphate: s('Look for “phos” in a word, as in “sodium phosphate”. If you see it, put the food back.'),
    potassium: s('Look for “potassium”, as in “potassium chloride”. If you see it, put the food back.'),
    avoided: foods => lineOf(s('Look for what you do not eat:'), foods),
    noneNamed: s('No such word? Then none is named on the label. It may still be in there.'),
    again: s('Foods change. Read the label each time you shop.'),
  },
  fridgeLook: {
    sodium: s('“Sodium”: keep to the number above.'),
    phosphate: s('“phos” in a word: put it back.'),
    potassium: s('“potassium” in the ingredients: put it back.'),
  },
  fridgeAvoid: foods => lineOf(s('Not for you:'), foods),

  swapsIntro: s('These foods do not fit as they are. Here is what to pick in their place.'),
  swap: (from, to, why, saved) => {
    const because =
      why.kind === 'additive'
        ? ` The first one names a ${additive[why.class]} additive.`
        : why.kind === 'ingredient'
          ? ' The first one has a food that you do not eat.'
          : saved === undefined
            ? ''
            : ` You save ${saved} of sodium.`;
    return line`In place of ${from}, pick ${to}.${because}`;
  },
  smallerTitle: 'Or have less of it',
  smaller: (food, portion, before) => line`${food}: have ${portion}, not ${before}.`,
  otherCompanion: (food, companion) => line`${food}: eat it with ${companion}.`,
  halfAndHalf: (food, portion, unsalted, other) => line`${food}: mix ${portion} with ${other} of ${unsalted}.`,
  noSwap: s('We found no swap among the foods we checked. Ask us for ideas.'),

  shoppingIntro: s('Take this list to the store. Check off what you need.'),
  noAisle: 'Aisle not noted',

  emergency: s('Call 911 if your chest hurts, you cannot get your breath, you faint, or your heart skips or races.'),
  callToday: s('Call your kidney team the same day if:'),
  callWhen: {
    'ckd-not-on-dialysis': [
      s('You feel very weak.'),
      s('Your legs or your face swell fast.'),
      s('You throw up or have loose stools and cannot eat or drink.'),
    ],
    hemodialysis: [s('You miss a treatment or cut it short.'), s('You feel very weak.'), s('You swell, or you need to sit up to breathe.')],
    'peritoneal-dialysis': [
      s('The fluid that drains out is cloudy.'),
      s('Your belly hurts or you have a fever.'),
      s('You swell, or you need to sit up to breathe.'),
    ],
    transplant: [
      s('You have a fever.'),
      s('You throw up or have loose stools.'),
      s('You missed your pills or could not keep them down.'),
      s('You feel very weak.'),
    ],
  },
  weightGain: {
    'between-treatments': (kg, lb) => s(`You gain more than ${kg} kg (${lb} lb) from one treatment to the next.`),
    '2-days': (kg, lb) => s(`You gain ${kg} kg (${lb} lb) or more in 2 days.`),
  },
  weightGainNotKnown: s('You gain too much weight between treatments.'),
  callDietitian: s('Call your dietitian if you cannot eat well or you lose weight. Then the plan may need to change.'),
  cautions: [
    s('This page does not take the place of your kidney team. Ask them before you change what you eat. What they say comes first.'),
    s('Do not stop or change a drug because of this page.'),
    s('Do not use a salt substitute unless your team says so. It may hold potassium.'),
    s('Do not eat star fruit or drink its juice. It can harm people with weak kidneys.'),
    s('Ask before you take herbs, powders or pills from a store.'),
    s('What a label does not print is not known. It is not zero.'),
    s('Do you have a food allergy? Then read the whole label each time.'),
  ],
  clientCaution: s('Your needs change when your blood tests, your weight or your treatment change. Ask if these numbers still hold.'),
  settingCautions: {
    'ckd-not-on-dialysis': [s('Do not cut out protein on your own. Ask how much is right for you.')],
    hemodialysis: [s('Dialysis takes protein from you. Do not skip meals to keep your numbers low.')],
    'peritoneal-dialysis': [s('The fluid takes protein from you. Do not skip meals to keep your numbers low.')],
    transplant: [
      s('Your pills make germs more of a risk. Cook meat, fish and eggs all the way through. Keep cold food cold.'),
      s('Do not eat raw fish, raw shellfish, raw eggs or raw sprouts. Skip cold smoked fish from the cooler.'),
      s('Wash all fruits and vegetables.'),
      s('Have only milk, cheese and juice marked “pasteurized”. Skip blue cheese and soft cheese with a white rind.'),
      s('Heat cold cuts, hot dogs and soft fresh cheese until they steam. Queso fresco is one.'),
      s('Do not eat grapefruit, pomelo or Seville oranges unless your team says you may. They can change how your pills work.'),
    ],
  },
  labelsRead: (from, to) =>
    from === to ? line`We read these labels on ${dayText(from)}.` : line`We read these labels from ${dayText(from)} to ${dayText(to)}.`,

  portion: portionText,

  ...aimsEn,

  heatIt: ({ line: { en: told } }) => told,
  mineralsNotKnown: minerals => `Not on the label, not known: ${minerals.join(', ')}`,
  plateTakes: most => line`The whole plate may have ${most} of sodium.`,
};
