import { foldName } from "../../../src/planning/text";

test.each([
  ["Array 1", "array 1"],
  [" ARRAY 1 ", "array 1"],
  ["ÄRRAY", "ärray"],
])("%j is the name %j", (typed, folded) => {
  expect(foldName(typed)).toBe(folded);
});
