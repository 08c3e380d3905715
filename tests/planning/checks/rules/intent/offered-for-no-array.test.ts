import { offeredForNoArray } from "../../../../../src/planning/checks/rules/intent/offered-for-no-array";
import { cells, found, sample } from "../../../../support/plan-rows";

test("warns of arrays in an offer that are for none, or for a site that has none", () => {
  const rows = sample();
  rows.sites.push({ site: "Attic" });
  rows.quote[2]!.for = "Attic";
  rows.quote[3]!.for = null;
  expect(found(offeredForNoArray, rows)).toEqual([
    "Quote 7 For: Attic has no arrays, so offer TML-26-014 has no price of a TB. Write an array, or a site with arrays.",
    "Quote 8 For: Alder 24, prepared is for no array, so offer TML-26-014 has no price of a TB. Write an array, or a site with arrays.",
  ]);
});

test("takes services, optional rows and rows in no offer as they are, and leaves an unknown name to the rule for names", () => {
  const rows = sample();
  rows.sites.push({ site: "Attic" });
  Object.assign(rows.quote[1]!, { for: "Belfry" });
  Object.assign(rows.quote[2]!, { for: "Attic", optional: "yes" });
  Object.assign(rows.quote[3]!, { for: "Attic", offer: null });
  Object.assign(rows.quote[4]!, { for: "Attic" });
  expect(cells(offeredForNoArray, rows)).toEqual([]);
});

test("takes a list as long as one of its names has arrays", () => {
  const rows = sample();
  rows.sites.push({ site: "Attic" }, { site: "Loft" });
  rows.quote[2]!.for = "Attic, cs-array-1";
  expect(cells(offeredForNoArray, rows)).toEqual([]);
  rows.quote[2]!.for = "Attic, Loft";
  expect(cells(offeredForNoArray, rows)).toEqual(["Quote 7 For"]);
});
