import { offeredArrayNotKnown } from "../../../../../src/planning/checks/rules/intent/offered-array-not-known";
import { cells, found, sample } from "../../../../support/plan-rows";

test("warns of arrays in an offer that the plan does not have, and of a row that is for none", () => {
  const rows = sample();
  rows.quote[2]!.for = "Attic";
  rows.quote[3]!.for = null;
  expect(found(offeredArrayNotKnown, rows)).toEqual([
    'Quote 7 For: The plan has no array and no site "Attic", so offer TML-26-014 has no price of a TB. Write an array or a site with arrays.',
    "Quote 8 For: Alder 24, prepared is for no array, so offer TML-26-014 has no price of a TB. Write an array or a site with arrays.",
  ]);
});

test("takes services, optional rows and rows in no offer as they are", () => {
  const rows = sample();
  Object.assign(rows.quote[2]!, { for: "Attic", optional: "yes" });
  Object.assign(rows.quote[3]!, { for: "Attic", offer: null });
  Object.assign(rows.quote[4]!, { for: "Attic" });
  expect(cells(offeredArrayNotKnown, rows)).toEqual([]);
});
