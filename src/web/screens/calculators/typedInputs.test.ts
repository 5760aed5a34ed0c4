import { describe, expect, it } from 'vitest';
import { formulaCatalog, runFormula } from '#core/client/formulas/catalog/formulaCatalog.ts';
import { formulaToJson } from '#core/client/formulas/catalog/formulaToJson.ts';
import { emptyInputs, exampleInputs, inputsOf } from './typedInputs.ts';

describe('typed inputs', () => {
  it.each(formulaCatalog.map(one => [one.name, formulaToJson(one)] as const))(
    '[CALC-8] the example in the fields of %s gives its result',
    (name, formula) => {
      const { value, issues } = runFormula(name, inputsOf(formula.inputs, exampleInputs(formula)));
      expect(issues).toEqual([]);
      for (const { label, text } of formula.example.results) expect(value?.map(one => [one.label, one.text])).toContainEqual([label, text]);
    },
  );

  it('[CALC-8] empty fields send nothing: no choice is made for anybody', () => {
    for (const { inputs } of formulaCatalog.map(formulaToJson)) expect(inputsOf(inputs, emptyInputs(inputs))).toEqual({});
  });
});
