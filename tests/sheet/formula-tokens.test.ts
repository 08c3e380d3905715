import { sheetNamesIn } from "../../src/sheet";

// ECMA-376 part 1, section 18.17.2.3: names of sheets in references, runs of sheets and sheets of other workbooks.
test.each([
  ["A1+SUM(B:B)", []],
  ['"Hall!A1"&A1', []],
  ["Hall!A1+'It''s done'!A1:B2", ["Hall", "It's done"]],
  ["SUM(Sheet1:Sheet4!C1)+SUM('Other Hall:Hall'!C1)", ["Sheet1", "Sheet4", "Other Hall", "Hall"]],
  ["[1]Hall!A1+'[Book.xlsx]Hall'!A1", ["[1]Hall", "[Book.xlsx]Hall"]],
])("the formula %s names the sheets %j", (formula, names) => {
  expect(sheetNamesIn(formula)).toEqual(names);
});
