import { combination, proteinCaution, starFruitCaution, switchedOff } from './combination.ts';
import { noPhosphateAdditive, noPotassiumSalt, noStarFruit, sodiumAgainstEnergy } from './tests.ts';

export const forPeritonealDialysis = combination(
  'peritoneal-dialysis',
  'peritoneal dialysis',
  [sodiumAgainstEnergy, noPhosphateAdditive, switchedOff(noPotassiumSalt), noStarFruit],
  ['Potassium is often unrestricted or even needed on peritoneal dialysis (common practice).', proteinCaution, starFruitCaution],
);
