import { combination, proteinCaution, starFruitCaution, switchedOff } from './combination.ts';
import { noPhosphateAdditive, noPotassiumSalt, noStarFruit, sodiumAgainstEnergy } from './tests.ts';

export const forHemodialysis = combination(
  'hemodialysis',
  'hemodialysis',
  [sodiumAgainstEnergy, noPhosphateAdditive, switchedOff(noPotassiumSalt), noStarFruit],
  [proteinCaution, starFruitCaution],
);
