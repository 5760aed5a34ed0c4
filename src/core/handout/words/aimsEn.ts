import type { AimKind } from '#core/client/aims/clientAims.ts';
import type { Need } from '#core/client/aims/needs.ts';
import type { Line } from '../handoutPage.ts';
import { line, programLine } from '../line.ts';
import type { AimWords } from './words.ts';

const s = programLine;

const needNames: Readonly<Record<Need, string>> = {
  energy: 'calories',
  protein: 'protein',
  potassium: 'potassium',
  phosphorus: 'phosphorus',
  fluid: 'fluid',
};

const amountNames = { energyKcal: 'calories', proteinG: 'protein', potassiumMg: 'potassium', phosphorusMg: 'phosphorus' } as const;

/** A reason and what comes of it. */
const aimLine: Readonly<Record<AimKind, (isSigned: boolean) => Line>> = {
  'safe-to-eat': () => s('Your pills make germs more of a risk. So foods that are safe as they come are put first.'),
  'less-potassium': isSigned =>
    s(`${isSigned ? 'Your plan has a limit for potassium.' : 'Your potassium is high.'} So foods with the least of it are put first.`),
  'more-potassium': isSigned =>
    s(`${isSigned ? 'You need more potassium.' : 'Your potassium is low.'} So foods with the most of it are put first.`),
  'no-potassium-additive': isSigned =>
    s(`${isSigned ? 'Your plan leaves out added potassium.' : 'Your potassium is high.'} So foods with none added are put first.`),
  'eat-enough': () => s('You need to eat enough to keep up your weight. So foods with the most calories and protein are put first.'),
  'less-fluid': () => s('You have a limit for fluid. So soups and drinks are put last.'),
  'less-phosphorus': isSigned =>
    s(
      `${isSigned ? 'Your plan has a limit for phosphorus.' : 'Your phosphorus is high.'} So foods with no phosphate added and the least phosphorus are put first.`,
    ),
  'more-phosphorus': isSigned =>
    s(`${isSigned ? 'You need more phosphorus.' : 'Your phosphorus is low.'} So foods with the most of it are put first.`),
  'no-phosphate-additive': isSigned =>
    s(`${isSigned ? 'Your plan leaves out added phosphate.' : 'Your phosphorus is high.'} So foods with none added are put first.`),
  'more-energy': () => s('You need more calories. So foods with the most are put first.'),
  'more-protein': () => s('You need more protein. So foods with the most are put first.'),
  'more-fluid': () => s('You need to drink more. So foods with the most fluid are put first.'),
};

const aimShort: Readonly<Record<AimKind, string>> = {
  'safe-to-eat': 'safe as they come',
  'less-potassium': 'least potassium',
  'more-potassium': 'most potassium',
  'no-potassium-additive': 'no potassium added',
  'eat-enough': 'most calories and protein',
  'less-fluid': 'little fluid',
  'less-phosphorus': 'least phosphorus',
  'more-phosphorus': 'most phosphorus',
  'no-phosphate-additive': 'no phosphate added',
  'more-energy': 'most calories',
  'more-protein': 'most protein',
  'more-fluid': 'most fluid',
};

/** Why foods are picked as they are, what counts as fluid, and what to add: the English part. It keeps to grade 6. */
export const aimsEn: AimWords = {
  aim: ({ kind, from }) => aimLine[kind](from === 'signed'),
  pickedFor: aims => line`We put these first for you: ${aims.map(({ kind }) => aimShort[kind]).join(', ')}.`,
  amountsNotKnown: amounts => `Not on the label, not known: ${amounts.map(of => amountNames[of]).join(', ')}`,
  countsAsFluid: (portion, day, kind) =>
    kind === 'most'
      ? `Counts as ${portion.cups} of your ${day.cups} ${day.isOneCup ? 'cup' : 'cups'} of fluid`
      : `Gives ${portion.cups} of the ${day.cups} ${day.isOneCup ? 'cup' : 'cups'} of fluid that you need`,
  fluidNotKnown: 'Counts as fluid: ask us how much',

  moreOf: {
    energy: 'To get more calories',
    protein: 'To get more protein',
    potassium: 'To get more potassium',
    phosphorus: 'To get more phosphorus',
    fluid: 'To get more fluid',
  },
  addFoods: (need, day) =>
    need === 'fluid'
      ? line`You need ${day} each day. Water counts too. Of the foods we read, these have the most fluid.`
      : line`You need ${day} of ${needNames[need]} each day. Add these foods. They have the most.`,
  atLeastIn: (need, amount) => `At least ${amount} of ${needNames[need]}`,
  noneToAdd: s('No label that we read tells how much is in it. Ask us what to add.'),
  swapLowers: (needs, isSure) =>
    line`${isSure ? 'But it has' : 'But it may have'} less ${needs.map(need => needNames[need]).join(' and less ')}.`,
};
