import { offerPastDay } from "../../../../../src/planning/checks/rules/intent/offer-past-day";
import { found, sample } from "../../../../support/plan-rows";

// These checks are run as of 2026-06-01.
test("warns of an offer from the day after its last one", () => {
  const rows = sample();
  rows.quote[0]!.validUntil = "2026-05-31";
  rows.quote[1]!.validUntil = "2026-06-01";
  expect(found(offerPastDay, rows)).toEqual(["Quote 5 Valid until: The offer ended on 2026-05-31. Write a new last day, or leave it blank: Two Alder 24, prepared."]);
});

test("says nothing of an offer without a last day", () => {
  expect(found(offerPastDay, sample())).toEqual([]);
});
