import { additiveTable } from '#core/additive/additiveTable.ts';
import { type Figures, figuresFrom, type Ingredient, type OtherFigure, type SureFigure } from '#data/packages/ingredient.ts';
import { keptSr28, type Sr28Row } from '../../data/reference/sr28.ts';

/** What a row may leave empty: then the panel leaves the line off, unless the food cannot hold it or weighs next to nothing. The others are traced by no row. */
const maybeEmpty = ['saturatedFatG', 'fiberG', 'totalSugarsG', 'cholesterolMg', 'calciumMg', 'ironMg'] as const;

const read = new Map<Ingredient, Figures>();

/** @throws RangeError when the ingredient's row does not exist or has no figure for what every food has. */
export function sr28Figures(ingredient: Ingredient): Figures {
  const figures = read.get(ingredient) ?? figuresOf(ingredient);
  read.set(ingredient, figures);
  return figures;
}

function figuresOf({ printed, source }: Ingredient): Figures {
  switch (source.kind) {
    case 'sr28':
      return rowFigures(source.ndb, source.emptyCellsFrom);
    case 'additive': {
      const mg = (element: Element) => mgPer100G(source.id, element);
      return onlyThese({
        phosphorusMg: mg('phosphorus'),
        potassiumMg: mg('potassium'),
        sodiumMg: mg('sodium'),
        calciumMg: mg('calcium'),
      });
    }
    case 'water':
      return onlyThese({ waterG: 100 });
    case 'nothing':
      return onlyThese({});
    default:
      throw new RangeError(`${printed}: neither a row of SR28 nor an additive`);
  }
}

function onlyThese(figures: Readonly<Partial<Record<SureFigure | OtherFigure, number>>>): Figures {
  return figuresFrom(
    figure => figures[figure] ?? 0,
    figure => (isTraced(figure) ? (figures[figure] ?? 0) : undefined),
  );
}

function isTraced(figure: OtherFigure): figure is (typeof maybeEmpty)[number] {
  return maybeEmpty.some(one => one === figure);
}

function rowFigures(ndb: string, emptyCellsFrom: string | undefined): Figures {
  const row = rowOf(ndb);
  const stead = emptyCellsFrom === undefined ? undefined : rowOf(emptyCellsFrom);
  return figuresFrom(
    figure => {
      if (row[figure] === '') throw new RangeError(`SR28 ${ndb} has no ${figure}`);
      return Number(row[figure]);
    },
    figure => {
      if (!isTraced(figure)) return undefined;
      const cell = row[figure] || (stead?.[figure] ?? '');
      if (cell !== '') return Number(cell);
      return cannotHold(ndb, figure) ? 0 : undefined;
    },
  );
}

/** Plants have no cholesterol; meat and fish have neither fiber nor sugars. The first two digits are the food group. */
function cannotHold(ndb: string, figure: OtherFigure): boolean {
  const group = ndb.slice(0, 2);
  if (figure === 'cholesterolMg') return ['02', '09', '11', '12', '16', '20'].includes(group);
  return (figure === 'fiberG' || figure === 'totalSugarsG') && ['05', '10', '13', '15', '23'].includes(group);
}

/**
 * What additives bring, a part of the whole. Phosphorus counts as added when the additive is an inorganic phosphate (not
 * lecithin, not flavor nucleotides), potassium always.
 */
export function addedMgPer100G({ source }: Ingredient, element: 'phosphorus' | 'potassium'): number {
  if (source.kind !== 'additive') return 0;
  return element === 'phosphorus' && additiveRow(source.id).phosphate !== 'inorganic' ? 0 : mgPer100G(source.id, element);
}

type Element = keyof ReturnType<typeof additiveRow>['massFraction'];

function mgPer100G(additive: string, element: Element): number {
  return 100_000 * (additiveRow(additive).massFraction[element] ?? 0);
}

function additiveRow(additive: string) {
  const row = additiveTable.find(({ id }) => id === additive);
  if (row === undefined) throw new RangeError(`no additive "${additive}"`);
  return row;
}

function rowOf(ndb: string): Sr28Row {
  const row = keptSr28.get(ndb);
  if (row === undefined) throw new RangeError(`no row ${ndb} of SR28 is kept`);
  return row;
}
