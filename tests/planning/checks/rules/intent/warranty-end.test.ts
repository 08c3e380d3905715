import { warrantyEnd } from "../../../../../src/planning/checks/rules/intent/warranty-end";
import { found, sample, set } from "../../../../support/plan-rows";

// These checks are run as of 2026-06-01, a day of which the days to others are counted by hand: 29 to the end of June, 31 + 31 to the end of August.
function withEnds(...days: string[]) {
  const rows = sample();
  days.forEach((day, at) => (rows.arrays[at]!.warrantyUntil = day));
  return rows;
}

test("notes a warranty that ends within the days that the settings say, and one that has ended", () => {
  expect(found(warrantyEnd, withEnds("2026-08-30", "2026-08-31", "2026-06-01", "2026-05-31"))).toEqual([
    "Arrays 5 Warranty until: The warranty of rr-array-1 ends on 2026-08-30, 90 days from now. Prolong it, or plan what follows.",
    "Arrays 7 Warranty until: The warranty of bi-array-1 ends on 2026-06-01, today. Prolong it, or plan what follows.",
    "Arrays 8 Warranty until: The warranty of bi-array-2 ended on 2026-05-31, 1 day ago. Prolong it, or plan what follows.",
  ]);
});

test("tells one as early as the setting asks", () => {
  const rows = withEnds("2026-08-30");
  set(rows, "Warranty notice days", "89");
  expect(found(warrantyEnd, rows)).toEqual([]);
});
