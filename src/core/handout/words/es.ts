import type { AdditiveClass } from '#core/additive/additive.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import { avoidedRun } from '../avoidedRun.ts';
import { figuresOf, line, lineOf, programLine } from '../line.ts';
import { aimsEs } from './aimsEs.ts';
import { spanishPortion } from './spanishPortion.ts';
import type { Asked, BasisWords, Words } from './words.ts';

const s = programLine;
const months = 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre'.split(' ');

/** "15 de noviembre de 2026". A text that is no day stays as it is. */
function dayText(day: Day): string {
  if (!isDay(day)) return day;
  const [year, month, date] = day.split('-');
  return `${Number(date)} de ${months[Number(month) - 1]} de ${year}`;
}

function asked(one: Asked): string {
  if (one.kind === 'between') return `de ${one.lo} a ${one.hi}`;
  return { below: 'menos de ', 'at-most': 'hasta ', 'at-least': 'al menos ', about: 'cerca de ' }[one.kind] + one.figure;
}

const additive: Readonly<Record<AdditiveClass, string>> = { phosphate: 'fosfato', potassium: 'potasio', sodium: 'sodio' };

const basis: Readonly<Record<BasisWords, string>> = {
  serving: 'en una porción de la etiqueta',
  portion: 'en la porción que usted come',
  plate: 'en todo lo que come junto',
  '100-g': 'en 100 g',
  '100-ml': 'en 100 mL',
  'reference-amount': 'en la cantidad que la gente suele comer de una vez',
  day: 'al día',
};

/** As a US label prints them in English. */
const printed = { sodium: 'Sodium', potassium: 'Potassium', phosphorus: 'Phosphorus' } as const;

const mealNames: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  breakfast: 'desayuno',
  lunch: 'almuerzo',
  dinner: 'cena',
  supper: 'cena',
  snack: 'merienda',
});

function mealInSentence(name: string): string {
  return mealNames[name.trim().toLowerCase()] ?? name;
}

function meal(name: string): string {
  const text = mealInSentence(name);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Spanish as it is read in the US (es-US, usted), with the terms of bilingual US labels. It says what en.ts says; sources stand there. */
export const es: Words = {
  titleFor: {
    'ckd-not-on-dialysis': 'Alimentos que cuidan sus riñones',
    hemodialysis: 'Alimentos que van bien con la hemodiálisis',
    'peritoneal-dialysis': 'Alimentos que van bien con la diálisis peritoneal',
    transplant: 'Alimentos que van bien con su riñón nuevo',
  },
  sectionTitle: {
    fridge: 'Para su refrigerador',
    notes: 'De su dietista',
    numbers: 'Sus números',
    foods: 'Alimentos que puede comer',
    ask: 'Pregúntenos primero',
    labels: 'Cómo leer una etiqueta',
    swaps: 'Cambios',
    shopping: 'Lista de compras',
    call: 'Cuándo llamar',
    cautions: 'Tenga en cuenta',
  },
  topicNumbersTitle: 'La regla de esta hoja',
  forReader: name => line`Para ${name}`,
  byAuthor: name => line`De ${name}`,
  settingLine: setting =>
    s(
      {
        'ckd-not-on-dialysis': 'Para adultos con enfermedad de los riñones que no están en diálisis',
        hemodialysis: 'Para adultos en hemodiálisis',
        'peritoneal-dialysis': 'Para adultos en diálisis peritoneal',
        transplant: 'Para adultos con un trasplante de riñón',
      }[setting],
    ),
  writtenOn: day => line`Escrito el ${dayText(day)}`,

  targetNames: {
    energy: 'Calorías',
    protein: 'Proteína',
    sodium: 'Sodio',
    potassium: 'Potasio',
    phosphorus: 'Fósforo',
    calcium: 'Calcio (comida, pastillas y quelantes de fósforo)',
    fluid: 'Líquidos',
    fiber: 'Fibra',
    phosphateAdditives: 'Aditivos de fosfato',
    potassiumAdditives: 'Aditivos de potasio',
  },
  nutrientNames: {
    sodiumMg: 'el sodio',
    potassiumMg: 'el potasio',
    phosphorusMg: 'el fósforo',
    energyKcal: 'las calorías',
    proteinG: 'la proteína',
  },
  units: { kcal: 'kcal', g: 'g', mg: 'mg', mL: 'mL', 'named on the label': 'en la etiqueta' },
  asked,
  fluidMeasures: ({ cups, isOneCup, ounces }) => `${cups} ${isOneCup ? 'taza' : 'tazas'}, o ${ounces} onzas líquidas`,
  askedHead: { below: 'menos de', 'at-most': 'hasta' },
  aDay: 'Cada día',
  meal,
  mealInSentence,
  numbersCaption: 'Lo máximo para un día y para cada comida',
  whatColumn: 'Cuándo',
  dayTarget: (item, range) => line`${item}: ${range} al día.`,
  noneNamedTarget: kind => line`Aditivos de ${additive[kind]}: ninguno nombrado en la etiqueta.`,
  ownNumbers: (signedOn, signer) => [
    line`Estos números son solo para usted. Los firmó ${signer} el ${dayText(signedOn)}.`,
    s('Por favor, no se los dé a otros. Cada persona necesita los suyos.'),
  ],
  fluidCounts: s('La sopa, la leche, el hielo y la gelatina también cuentan como líquido.'),
  sharesOfDay: s(
    'Cada comida tiene una parte del día. Cuenta todo lo que hay en el plato, no un solo alimento. Si come menos en una comida, le queda más para la siguiente.',
  ),
  noSodiumNumber: s('Usted aún no tiene un número para el sodio. Pregúntenos cuánta sal puede comer.'),
  noNumbers: s('En su plan aún no hay números. Pregúntenos si tiene dudas.'),
  onlyTheTeam: s(
    '¿No hay aquí un número para el potasio o el fósforo? No se ponga uno por su cuenta. Sus análisis de sangre nos dicen si lo necesita.',
  ),

  sodiumRule: (most, on) => line`Sodio: ${most} ${basis[on]}.`,
  sodiumToEnergy: s('Mire todo lo que come junto. Los mg de sodio no deben ser más que las calorías.'),
  companionRoom: (companions, more) => line`Con ${companions}, el alimento puede tener tantos mg de sodio como calorías, y ${more} más.`,
  additiveRule: kind => line`La etiqueta no nombra ningún aditivo de ${additive[kind]}.`,
  ingredientRule: food => line`La etiqueta no nombra ${food}.`,
  otherRule: english => line`La regla que usamos: ${english}`,

  bestPicks: 'Las mejores opciones para una comida',
  lookFor: 'En la etiqueta',
  foodsIntro: [s('Leímos las etiquetas de estos alimentos. Van bien si usted come solo la porción indicada.')],
  dayIsTheMost: s('La porción del día es lo máximo. Deja menos espacio para el resto de su comida.'),
  eatenWith: plate => line`La porción cuenta lo que usted come junto con ella: ${plate}.`,
  forMeal: name => line`Calculado para ${name}.`,
  noneNamedHere: kinds => [
    ...kinds.map(kind => line`Aditivos de ${additive[kind]}: ninguno nombrado en la etiqueta.`),
    s('Eso no prueba que no haya ninguno.'),
  ],
  inAMeal: amount => `En una comida: ${amount}`,
  inADay: amount => `Máximo en un día: ${amount}`,
  portionOnly: amount => `Porción: ${amount}`,
  sodiumInIt: amount => `${amount} de sodio`,
  notOnLabel: 'cantidad desconocida',
  closeCall: 'Cerca del límite: revise el paquete',
  potassiumNamed: 'Le han agregado potasio: pregúntenos primero',
  estimated: 'Un cálculo aproximado, no solo de la etiqueta',
  noneFits: s('Aquí no encontramos ningún alimento que vaya bien. Pregúntenos qué puede comer en su lugar.'),
  noneChecked: s('Aún no hemos revisado ningún alimento de este tipo. Pregúntenos antes de comprar.'),
  nothingBounds: s('En su plan no hay un número para revisar estos alimentos. Pregúntenos por ellos.'),

  askIntro: [s('La etiqueta no nos dice si estos alimentos van bien. Pregúntenos antes de comprarlos.')],
  askWhy: (food, why) => {
    if (why.kind === 'nutrient') return line`${food}: no se conoce ${es.nutrientNames[why.nutrient] ?? 'la cantidad'}.`;
    if (why.kind === 'additive') return line`${food}: puede tener un aditivo de ${additive[why.class]}.`;
    if (why.kind === 'ingredient') return line`${food}: puede tener ${avoidedRun(why.name, 'es')}.`;
    return line`${food}: la etiqueta no nos dice lo suficiente.`;
  },

  steps: {
    serving: s(
      'Busque “Tamaño de la porción” (“Serving size”). ¿Come usted el doble? Entonces cada número de la etiqueta también es el doble.',
    ),
    numberOfClient: (item, day, meals) =>
      figuresOf(line`Busque “${es.targetNames[item]}” (“${printed[item]}”). Su día: ${day}. No pase del límite de cada comida:`, meals),
    notPrinted: s('¿No está en la etiqueta? Entonces no se conoce. Pregúntenos.'),
    sodiumOfTopic: s('Busque “Sodio” (“Sodium”). Siga la regla al principio de esta hoja.'),
    percent: s(
      'Mire el “% de Valor diario” (“% Daily Value”) del sodio. 5% o menos es bajo. 20% o más es alto. Su propio número cuenta más.',
    ),
    ingredients: s('Ahora lea “Ingredientes” (“Ingredients”). Lea hasta el final. La letra pequeña también cuenta.'),
    phosphate: s(
      'Busque palabras con “fosf” o, en inglés, “phos”, como “fosfato de sodio” o “sodium phosphate”. Si ve una, deje ese alimento.',
    ),
    potassium: s(
      'Busque “potasio” o, en inglés, “potassium”, como “cloruro de potasio” o “potassium chloride”. Si lo ve, deje ese alimento.',
    ),
    avoided: foods => lineOf(s('Busque lo que usted no come:'), foods),
    noneNamed: s('¿No ve ninguna de esas palabras? Entonces la etiqueta no nombra ninguno. Aún puede haber alguno.'),
    again: s('Los alimentos cambian. Lea la etiqueta cada vez que compre.'),
  },
  fridgeLook: {
    sodium: s('“Sodio” (“Sodium”): no pase del número de arriba.'),
    phosphate: s('“fosf” o “phos” en una palabra: no lo compre.'),
    potassium: s('“potasio” o “potassium” en los ingredientes: no lo compre.'),
  },
  fridgeAvoid: foods => lineOf(s('No es para usted:'), foods),

  swapsIntro: s('Estos alimentos no van bien tal como vienen. Esto es lo que puede elegir en su lugar.'),
  swap: (from, to, why, saved) => {
    const because =
      why.kind === 'additive'
        ? ` El primero nombra un aditivo de ${additive[why.class]}.`
        : why.kind === 'ingredient'
          ? ' El primero tiene un alimento que usted no come.'
          : saved === undefined
            ? ''
            : ` Ahorra ${saved} de sodio.`;
    return line`En lugar de ${from}, elija ${to}.${because}`;
  },
  smallerTitle: 'O coma menos',
  smaller: (food, amount, before) => line`${food}: coma ${amount} en lugar de ${before}.`,
  otherCompanion: (food, companion) => line`${food}: cómalo con ${companion}.`,
  halfAndHalf: (food, amount, unsalted, other) => line`${food}: mezcle ${amount} con ${other} de ${unsalted}.`,
  noSwap: s('No encontramos un cambio entre los alimentos que revisamos. Pídanos ideas.'),

  shoppingIntro: s('Lleve esta lista a la tienda. Marque lo que necesite.'),
  noAisle: 'Pasillo sin anotar',

  emergency: s('Llame al 911 si le duele el pecho, le falta el aire, se desmaya o su corazón se salta latidos o se acelera.'),
  callToday: s('Llame a su equipo renal el mismo día si:'),
  callWhen: {
    'ckd-not-on-dialysis': [
      s('Se siente muy débil.'),
      s('Las piernas o la cara se le hinchan rápido.'),
      s('Vomita o tiene diarrea y no puede comer ni beber.'),
    ],
    hemodialysis: [s('Faltó a un tratamiento o lo acortó.'), s('Se siente muy débil.'), s('Se hincha o tiene que sentarse para respirar.')],
    'peritoneal-dialysis': [
      s('El líquido que drena sale turbio.'),
      s('Le duele el vientre o tiene fiebre.'),
      s('Se hincha o tiene que sentarse para respirar.'),
    ],
    transplant: [s('Tiene fiebre.'), s('Vomita o tiene diarrea.'), s('No tomó sus pastillas o las vomitó.'), s('Se siente muy débil.')],
  },
  weightGain: {
    'between-treatments': (kg, lb) => s(`Sube de peso más de ${kg} kg (${lb} lb) de un tratamiento al otro.`),
    '2-days': (kg, lb) => s(`Sube de peso ${kg} kg (${lb} lb) o más en 2 días.`),
  },
  weightGainNotKnown: s('Sube mucho de peso entre tratamientos.'),
  callDietitian: s('Llame a su dietista si no puede comer bien o baja de peso. Entonces puede hacer falta otro plan.'),
  cautions: [
    s('Esta hoja no reemplaza a su equipo renal. Pregúntele antes de cambiar lo que come. Lo que le diga su equipo es lo primero.'),
    s('No deje de tomar ni cambie sus medicinas a causa de esta hoja.'),
    s('No use un sustituto de la sal, a menos que su equipo se lo indique. Puede contener potasio.'),
    s('No coma carambola (“star fruit”) ni tome su jugo. Puede hacer daño a quien tiene los riñones débiles.'),
    s('Pregunte antes de tomar hierbas, polvos o pastillas de la tienda.'),
    s('Lo que la etiqueta no dice no se conoce. No es cero.'),
    s('¿Tiene alergia a un alimento? Entonces lea cada vez toda la etiqueta.'),
  ],
  clientCaution: s(
    'Lo que usted necesita cambia cuando cambian sus análisis de sangre, su peso o su tratamiento. Pregunte si estos números siguen siendo los suyos.',
  ),
  settingCautions: {
    'ckd-not-on-dialysis': [s('No deje de comer proteína por su cuenta. Pregunte cuánta necesita.')],
    hemodialysis: [s('La diálisis le quita proteína. No deje de comer para bajar sus números.')],
    'peritoneal-dialysis': [s('El líquido le quita proteína. No deje de comer para bajar sus números.')],
    transplant: [
      s(
        'Con sus pastillas, los microbios son un riesgo mayor. Cocine bien la carne, el pescado y los huevos. Mantenga fría la comida fría.',
      ),
      s('No coma pescado crudo, mariscos crudos, huevos crudos ni brotes crudos. Evite el pescado ahumado refrigerado.'),
      s('Lave todas las frutas y verduras.'),
      s('Tome solo leche, queso y jugo que digan “pasteurizado”. Evite el queso azul y los quesos blandos de corteza blanca.'),
      s('Caliente los embutidos, las salchichas y los quesos frescos, como el queso fresco, hasta que echen vapor.'),
      s(
        'No coma toronja o pomelo (“grapefruit”, “pomelo”) ni naranja agria (“Seville orange”), a menos que su equipo lo permita. Pueden cambiar el efecto de sus pastillas.',
      ),
    ],
  },
  labelsRead: (from, to) =>
    from === to ? line`Leímos estas etiquetas el ${dayText(from)}.` : line`Leímos estas etiquetas del ${dayText(from)} al ${dayText(to)}.`,

  portion: spanishPortion,

  ...aimsEs,

  heatIt: ({ line: { es: told } }) => told,
  mineralsNotKnown: minerals =>
    `No está en la etiqueta, no se conoce: ${minerals.map(one => (one === 'phosphorus' ? 'fósforo' : 'potasio')).join(', ')}`,
  plateTakes: most => line`Todo lo que hay en el plato puede tener ${most} de sodio.`,
};
