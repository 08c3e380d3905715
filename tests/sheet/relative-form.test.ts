import fc from "fast-check";
import { relativeForm } from "../../src/sheet";
import { movedFormula } from "../support/host-workbook/moved-formula";

describe("the form of a formula without its row", () => {
  test.each([
    ["=A5+1", 6, "=A(-2)+1"],
    ["=$A5+A$5+$A$5", 4, "=$A(0)+A$5+$A$5"],
    ["=SUM(A1:B9)", 0, "=SUM(A(0):B(8))"],
    ['="A5"&A5', 4, '="A5"&A(0)'],
    ["='Rack A5'!A5", 4, "='Rack A5'!A(0)"],
    ["=LOG10(A5)+XFE1+A1048577", 4, "=LOG10(A(0))+XFE1+A1048577"],
    ["=A5.B6+A5_x+1E5", 4, "=A5.B6+A5_x+1E5"],
  ])("of %s in row %i is %s", (formula, row, form) => {
    expect(relativeForm(formula, row)).toBe(form);
  });

  test.each(["=SUM(2:3)", "=Table1[A5]", "=SUM($2:$3)"])("of %s is its own, as it may not be copied", (formula) => {
    expect(relativeForm(formula, 1)).not.toBe(relativeForm(formula, 2));
  });

  test("is the same of a formula and of its copy in another row, whatever it is made of", () => {
    const cell = fc.tuple(fc.constantFrom("", "$"), fc.constantFrom("A", "Z", "AB", "XFD"), fc.constantFrom("", "$"), fc.integer({ min: 100, max: 900 })).map((parts) => parts.join(""));
    const piece = fc.oneof(cell, fc.constantFrom('"A1 and ""B2"""', "'Sheet A1'!", "SUM(", ")", "LOG10(", "1.5", "TRUE", ",", ":", "&", " ", "name_A1"));
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 }), (pieces, from, to) => {
        const formula = `=${pieces.join("+")}`;
        const copy = movedFormula(formula, { row: from, column: 3 }, { row: to, column: 3 });
        expect(relativeForm(copy, to)).toBe(relativeForm(formula, from));
      }),
      { seed: 20260301, numRuns: 500 },
    );
  });
});
