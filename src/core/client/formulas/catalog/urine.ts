import { computed } from '../computed.ts';
import {
  intakeMgFromUrineMg,
  potassiumMgFromMmol,
  potassiumMmolFromMg,
  saltGFromSodiumMg,
  sodiumMgFromMmol,
  sodiumMmolFromMg,
  urineMineralsFacts,
} from '../urineMinerals.ts';
import { describeFormula } from './formula.ts';
import { figureAsEntered } from './formulaInput.ts';

const milligrams = { unit: 'mg/day', decimals: 0 } as const;
const millimoles = { unit: 'mmol/day', decimals: 1 } as const;

const inUrine = (label: string, mgPerMmol: number, hi: number) =>
  figureAsEntered({
    label,
    units: [
      ['mmol', mgPerMmol],
      ['mEq', mgPerMmol],
      ['mg', 1],
    ],
    lo: 0,
    hi,
  });

/** Both in mg and in mmol, whichever was given; with what a day's intake comes to at nine tenths in urine. */
export const urineFormulas = [
  describeFormula({
    ...urineMineralsFacts,
    name: 'sodium-in-urine',
    title: 'Sodium of a day: urine, salt and intake',
    subject: 'minerals',
    purpose: 'Turns sodium between mmol and mg, into table salt, and a day’s urine into the intake it points to.',
    inputs: { sodium: inUrine('Sodium in a day’s urine', 22.99, 45_000) },
    formula: ['Sodium mg = mmol × 22.99', 'Table salt g = sodium mg × 2.542 / 1000', 'Intake = urine / 0.9'],
    results: {
      mg: { label: 'Sodium', ...milligrams },
      mmol: { label: 'Sodium', ...millimoles },
      salt: { label: 'As table salt', unit: 'g/day', decimals: 1 },
      intake: { label: 'Intake that it points to, if it is of urine', ...milligrams },
    },
    example: { inputs: { sodium: '140 mmol' }, results: { mg: 3219, mmol: 140, salt: 8.2 }, source: 'molar mass' },
    compute({ sodium: { value, unit } }) {
      const mg = unit === 'mg' ? computed(value) : sodiumMgFromMmol(value);
      if (mg.kind === 'refused') return mg;
      const [mmol, salt, intake] = [sodiumMmolFromMg(mg.value), saltGFromSodiumMg(mg.value), intakeMgFromUrineMg(mg.value)];
      if (mmol.kind === 'refused') return mmol;
      if (salt.kind === 'refused') return salt;
      return intake.kind === 'refused' ? intake : computed({ mg: mg.value, mmol: mmol.value, salt: salt.value, intake: intake.value });
    },
  }),
  describeFormula({
    ...urineMineralsFacts,
    name: 'potassium-in-urine',
    title: 'Potassium of a day: urine and intake',
    subject: 'minerals',
    purpose: 'Turns potassium between mmol and mg, and a day’s urine into the intake it points to.',
    inputs: { potassium: inUrine('Potassium in a day’s urine', 39.1, 45_000) },
    formula: ['Potassium mg = mmol × 39.10', 'Intake = urine / 0.9'],
    results: {
      mg: { label: 'Potassium', ...milligrams },
      mmol: { label: 'Potassium', ...millimoles },
      intake: { label: 'Intake that it points to, if it is of urine', ...milligrams },
    },
    example: {
      inputs: { potassium: '62 mmol' },
      results: { mg: 2424, mmol: 62, intake: 2694 },
      source: 'molar mass; Nutrients 2016;8:444',
    },
    compute({ potassium: { value, unit } }) {
      const mg = unit === 'mg' ? computed(value) : potassiumMgFromMmol(value);
      if (mg.kind === 'refused') return mg;
      const [mmol, intake] = [potassiumMmolFromMg(mg.value), intakeMgFromUrineMg(mg.value)];
      if (mmol.kind === 'refused') return mmol;
      return intake.kind === 'refused' ? intake : computed({ mg: mg.value, mmol: mmol.value, intake: intake.value });
    },
  }),
];
