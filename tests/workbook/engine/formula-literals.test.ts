import { createEvaluator } from "../../../src/headless/evaluate";

describe("the browser workbook reads literals as they are written", () => {
  const evaluate = createEvaluator();

  test.each([
    ["=ISNUMBER(0.20)", true],
    ["=ISNUMBER(1E-15)", true],
    ["=ISNUMBER(1.5e+3)", true],
    ['=ISTEXT("0.20")', true],
    ['="say ""so"""', 'say "so"'],
    ["=-0.50", -0.5],
  ])("%s is %p", async (formula, value) => {
    expect(await evaluate(formula)).toEqual({ formula, value });
  });

  test.each([
    ['={0.20,"0.20","1-2","007"}', [[0.2, "0.20", "1-2", "007"]]],
    ['={"a;b","c,d";TRUE,-4}', [["a;b", "c,d"], [true, -4]]],
    ['={"a}b"}', "a}b"],
  ])("the array %s keeps its items", async (formula, values) => {
    expect(await evaluate(formula)).toEqual(Array.isArray(values) ? { formula, values } : { formula, value: values });
  });
});
