import type { Yardstick } from './yardstick.ts';
import { forCkdNotOnDialysis } from './yardsticks/forCkdNotOnDialysis.ts';
import { forHemodialysis } from './yardsticks/forHemodialysis.ts';
import { forPeritonealDialysis } from './yardsticks/forPeritonealDialysis.ts';
import { forTransplant } from './yardsticks/forTransplant.ts';
import { lowInSodiumAsEaten } from './yardsticks/lowInSodiumAsEaten.ts';
import { lowSodiumUs } from './yardsticks/lowSodiumUs.ts';
import { noAddedPotassiumSalts } from './yardsticks/noAddedPotassiumSalts.ts';
import { noPhosphateAdditives } from './yardsticks/noPhosphateAdditives.ts';
import { phosphorusToProtein } from './yardsticks/phosphorusToProtein.ts';
import { potassiumAndPhosphorusClasses } from './yardsticks/potassiumAndPhosphorusClasses.ts';
import { proteinLight } from './yardsticks/proteinLight.ts';
import { sodiumFreeUs } from './yardsticks/sodiumFreeUs.ts';
import { veryLowSodiumUs } from './yardsticks/veryLowSodiumUs.ts';

/** The yardsticks that every workspace has, in the order in which they are listed. */
export const builtInYardsticks: readonly Yardstick[] = [
  lowInSodiumAsEaten,
  lowSodiumUs,
  veryLowSodiumUs,
  sodiumFreeUs,
  noPhosphateAdditives,
  noAddedPotassiumSalts,
  potassiumAndPhosphorusClasses,
  phosphorusToProtein,
  proteinLight,
  forCkdNotOnDialysis,
  forHemodialysis,
  forPeritonealDialysis,
  forTransplant,
];
