import { combination, starFruitCaution, switchedOff } from './combination.ts';
import { noGrapefruit, noPhosphateAdditive, noPotassiumSalt, noStarFruit, sodiumAgainstEnergy } from './tests.ts';

export const forTransplant = combination(
  'transplant',
  'a kidney transplant',
  [sodiumAgainstEnergy, switchedOff(noPhosphateAdditive), switchedOff(noPotassiumSalt), noGrapefruit, noStarFruit],
  [
    'Low phosphate after a transplant calls for more phosphorus, not less (KDOQI 2020, opinion).',
    'With tacrolimus or cyclosporine: no grapefruit, pomelo or Seville orange; switch that test on.',
    'Food safety comes first for as long as the immune system is held down, strictest in the first year.',
    starFruitCaution,
  ],
);
