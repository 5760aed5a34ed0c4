import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { type Figures, figuresFrom, type Ingredient, type OtherFigure, type SureFigure } from '#data/packages/ingredient.ts';
import { openDataFolder } from '../../test/openData.ts';

/** Columns of the abbreviated file of USDA SR28, per 100 g. A food without one of these is no truth: reading it throws. */
const sureColumns: Readonly<Record<SureFigure, string>> = {
  waterG: 'Water_(g)',
  proteinG: 'Protein_(g)',
  fatG: 'Lipid_Tot_(g)',
  carbohydrateG: 'Carbohydrt_(g)',
  phosphorusMg: 'Phosphorus_(mg)',
  potassiumMg: 'Potassium_(mg)',
  sodiumMg: 'Sodium_(mg)',
};

/** These may be empty: then the panel leaves the line off, unless the food cannot hold it or weighs next to nothing. The others are traced by no row. */
const otherColumns: Readonly<Partial<Record<OtherFigure, string>>> = {
  saturatedFatG: 'FA_Sat_(g)',
  fiberG: 'Fiber_TD_(g)',
  totalSugarsG: 'Sugar_Tot_(g)',
  cholesterolMg: 'Cholestrl_(mg)',
  calciumMg: 'Calcium_(mg)',
  ironMg: 'Iron_(mg)',
};

const read = new Map<Ingredient, Figures>();

/** @throws RangeError when the ingredient's row does not exist or has no figure for one of `sureColumns`. */
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
    figure => (figure in otherColumns ? (figures[figure] ?? 0) : undefined),
  );
}

function rowFigures(ndb: string, emptyCellsFrom: string | undefined): Figures {
  const row = rowOf(ndb);
  const stead = emptyCellsFrom === undefined ? {} : rowOf(emptyCellsFrom);
  return figuresFrom(
    figure => {
      const cell = row[sureColumns[figure]] ?? '';
      if (cell === '') throw new RangeError(`SR28 ${ndb} has no ${figure}`);
      return Number(cell);
    },
    figure => {
      const column = otherColumns[figure];
      if (column === undefined) return undefined;
      const cell = row[column] || stead[column] || '';
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

let rows: ReadonlyMap<string, Readonly<Record<string, string>>> | undefined;

function rowOf(ndb: string): Readonly<Record<string, string>> {
  rows ??= new Map(sr28Rows().map(row => [row.NDB_No ?? '', row]));
  const row = rows.get(ndb);
  if (row === undefined) throw new RangeError(`SR28 has no row ${ndb}`);
  return row;
}

/** Every row of the abbreviated file of USDA SR28 in the folder of open data, by its headings. */
export function sr28Rows(): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(join(openDataFolder, 'usda-sr28.csv'), 'utf8').replace(/^\uFEFF/, '');
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}
