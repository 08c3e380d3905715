import { effectiveBytes, parseReduction } from "../../../src/planning/capacity";
import { bytes, share } from "../../../src/planning/quantity";

test.each<[string | number, bigint]>([
  [3, 240n],
  ["3:1", 240n],
  ["3 : 2", 120n],
  ["2.5:1", 200n],
  [1, 80n],
  [1.25, 100n],
  [30, 2400n],
])("a reduction of %p lets 100 bytes filled to 80 %% hold %p", (reduction, logical) => {
  expect(effectiveBytes(bytes(100n), parseReduction(reduction, "reduction"), share(0.8))).toBe(logical);
});
