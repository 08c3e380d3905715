import { marginRange } from "../../../../../src/planning/checks/rules/intent/margin-range";
import { cells, found, sample, set } from "../../../../support/plan-rows";

function withMargin(margin: number | string | null) {
  const rows = sample();
  rows.quote[0]!.margin = margin;
  return rows;
}

test("warns of a margin that makes a price a hundred times the cost", () => {
  expect(found(marginRange, withMargin(0.99))).toEqual(["Quote 5 Margin: Margin 99% is over the ceiling of 75%. Mend it, or the setting: Two Alder 24, prepared."]);
});

test("holds a margin against the floor and the ceiling that the settings say, and takes both themselves", () => {
  const rows = withMargin("19%");
  set(rows, "Margin floor", "20%");
  set(rows, "Margin ceiling", "30%");
  expect(found(marginRange, rows)).toEqual(["Quote 5 Margin: Margin 19% is under the floor of 20%. Mend it, or the setting: Two Alder 24, prepared."]);
  rows.quote[0]!.margin = "30%";
  expect(cells(marginRange, rows)).toEqual([]);
});

test("says nothing of a row without a margin", () => {
  expect(cells(marginRange, withMargin(null))).toEqual([]);
});
