import { compositionPer100G } from './composition.ts';
import type { FiguresOf } from './ingredient.ts';
import type { PrintStyle } from './maker.ts';
import { type Panel, printedPanel } from './panel.ts';
import type { Food } from './recipe.ts';
import { statementText } from './statementText.ts';

/** What a package says of its food: the panel for one serving, and the ingredient statement. */
interface PrintedPackage extends Panel {
  readonly statement: string;
}

export function printedPackage(food: Food, style: PrintStyle, figuresOf?: FiguresOf): PrintedPackage {
  return {
    ...printedPanel(compositionPer100G(food, figuresOf), food.serving.grams, style, food.leavesOutZeros),
    statement: misprinted(statementText(food, style), food),
  };
}

function misprinted(statement: string, { odd }: Food): string {
  return odd?.misprint === undefined ? statement : statement.replace(odd.misprint.right, odd.misprint.wrong);
}
