import { combination, starFruitCaution, switchedOff } from './combination.ts';
import { noPhosphateAdditive, noPotassiumSalt, noStarFruit, sodiumAgainstEnergy } from './tests.ts';

export const forCkdNotOnDialysis = combination(
  'ckd-not-on-dialysis',
  'CKD not on dialysis',
  [sodiumAgainstEnergy, noPhosphateAdditive, switchedOff(noPotassiumSalt), noStarFruit],
  ['With potassium in range there is no potassium limit; fruit and vegetables are encouraged (KDOQI 2020).', starFruitCaution],
);
