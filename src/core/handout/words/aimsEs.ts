import type { AimKind } from '#core/client/aims/clientAims.ts';
import type { Need } from '#core/client/aims/needs.ts';
import type { Line } from '../handoutPage.ts';
import { line, programLine } from '../line.ts';
import type { AimWords } from './words.ts';

const s = programLine;

const needNames: Readonly<Record<Need, string>> = {
  energy: 'calorías',
  protein: 'proteína',
  potassium: 'potasio',
  phosphorus: 'fósforo',
  fluid: 'líquido',
};

const amountNames = { energyKcal: 'calorías', proteinG: 'proteína', potassiumMg: 'potasio', phosphorusMg: 'fósforo' } as const;

const aimLine: Readonly<Record<AimKind, (isSigned: boolean) => Line>> = {
  'safe-to-eat': () =>
    s('Con sus pastillas, los microbios son un riesgo mayor. Por eso van primero los alimentos que son seguros tal como vienen.'),
  'less-potassium': isSigned =>
    s(`${isSigned ? 'Su plan tiene un límite de potasio.' : 'Su potasio está alto.'} Por eso van primero los alimentos que menos tienen.`),
  'more-potassium': isSigned =>
    s(`${isSigned ? 'Usted necesita más potasio.' : 'Su potasio está bajo.'} Por eso van primero los alimentos que más tienen.`),
  'no-potassium-additive': isSigned =>
    s(
      `${isSigned ? 'Su plan deja fuera el potasio agregado.' : 'Su potasio está alto.'} Por eso van primero los alimentos que no lo llevan.`,
    ),
  'eat-enough': () =>
    s('Usted necesita comer lo suficiente para mantener su peso. Por eso van primero los alimentos con más calorías y proteína.'),
  'less-fluid': () => s('Usted tiene un límite de líquidos. Por eso las sopas y las bebidas van al final.'),
  'less-phosphorus': isSigned =>
    s(
      `${isSigned ? 'Su plan tiene un límite de fósforo.' : 'Su fósforo está alto.'} Por eso van primero los alimentos sin fosfato agregado y con menos fósforo.`,
    ),
  'more-phosphorus': isSigned =>
    s(`${isSigned ? 'Usted necesita más fósforo.' : 'Su fósforo está bajo.'} Por eso van primero los alimentos que más tienen.`),
  'no-phosphate-additive': isSigned =>
    s(
      `${isSigned ? 'Su plan deja fuera el fosfato agregado.' : 'Su fósforo está alto.'} Por eso van primero los alimentos que no lo llevan.`,
    ),
  'more-energy': () => s('Usted necesita más calorías. Por eso van primero los alimentos que más tienen.'),
  'more-protein': () => s('Usted necesita más proteína. Por eso van primero los alimentos que más tienen.'),
  'more-fluid': () => s('Usted necesita beber más. Por eso van primero los alimentos con más líquido.'),
};

const aimShort: Readonly<Record<AimKind, string>> = {
  'safe-to-eat': 'seguros tal como vienen',
  'less-potassium': 'menos potasio',
  'more-potassium': 'más potasio',
  'no-potassium-additive': 'sin potasio agregado',
  'eat-enough': 'más calorías y proteína',
  'less-fluid': 'poco líquido',
  'less-phosphorus': 'menos fósforo',
  'more-phosphorus': 'más fósforo',
  'no-phosphate-additive': 'sin fosfato agregado',
  'more-energy': 'más calorías',
  'more-protein': 'más proteína',
  'more-fluid': 'más líquido',
};

/** What aimsEn.ts says, in Spanish as it is read in the US. */
export const aimsEs: AimWords = {
  aim: ({ kind, from }) => aimLine[kind](from === 'signed'),
  pickedFor: aims => line`Pusimos estos primero para usted: ${aims.map(({ kind }) => aimShort[kind]).join(', ')}.`,
  amountsNotKnown: amounts => `No está en la etiqueta, no se conoce: ${amounts.map(of => amountNames[of]).join(', ')}`,
  countsAsFluid: (amount, day, kind) =>
    kind === 'most'
      ? `Cuenta como ${amount.cups} de sus ${day.cups} ${day.isOneCup ? 'taza' : 'tazas'} de líquido`
      : `Da ${amount.cups} de las ${day.cups} ${day.isOneCup ? 'taza' : 'tazas'} de líquido que usted necesita`,
  fluidNotKnown: 'Cuenta como líquido: pregúntenos cuánto',

  moreOf: {
    energy: 'Para obtener más calorías',
    protein: 'Para obtener más proteína',
    potassium: 'Para obtener más potasio',
    phosphorus: 'Para obtener más fósforo',
    fluid: 'Para obtener más líquido',
  },
  addFoods: (need, day) =>
    need === 'fluid'
      ? line`Usted necesita ${day} cada día. El agua también cuenta. De los alimentos que leímos, estos tienen más líquido.`
      : line`Usted necesita ${day} de ${needNames[need]} cada día. Agregue estos alimentos. Son los que más tienen.`,
  atLeastIn: (need, amount) => `Al menos ${amount} de ${needNames[need]}`,
  noneToAdd: s('Ninguna etiqueta que leímos dice cuánto tiene. Pregúntenos qué agregar.'),
  swapLowers: (needs, isSure) =>
    line`${isSure ? 'Pero tiene' : 'Pero puede tener'} menos ${needs.map(need => needNames[need]).join(' y menos ')}.`,
};
