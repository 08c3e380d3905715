import { quotedTwice } from "../../../../../src/planning/checks/rules/intent/quoted-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array that is offered by its own name and by that of its site", () => {
  const rows = sample();
  rows.quote.push({ item: "Alder 24", kind: "array", for: "rr-array-2", quantity: 1, cost: 100, margin: 0.2, currency: "EUR" });
  expect(found(quotedTwice, rows)).toEqual(["Quote 11 For: rr-array-2 is offered in row 5 already. Take it out of one of the two, or mend what this row is for."]);
});

test("takes a service for an array that is offered, and arrays of two sites", () => {
  const rows = sample();
  rows.quote.push({ item: "Installation", kind: "service", for: "rr-array-2", quantity: 1, cost: 100, margin: 0.2, currency: "EUR" });
  expect(cells(quotedTwice, rows)).toEqual([]);
});

test("takes an array in two offers, and one that the customer may leave out", () => {
  const rows = sample();
  const array = { item: "Alder 24", kind: "array", for: "rr-array-2", quantity: 1, cost: 100, margin: 0.2, currency: "EUR" } as const;
  rows.quote.push({ ...array, offer: "TML-26-900" }, { ...array, optional: "yes" });
  expect(cells(quotedTwice, rows)).toEqual([]);
});

test("finds an array of a list that its site offers already", () => {
  const rows = sample();
  rows.quote[2]!.for = "cs-array-1, rr-array-2";
  expect(found(quotedTwice, rows)).toEqual(["Quote 7 For: rr-array-2 is offered in row 5 already. Take it out of one of the two, or mend what this row is for."]);
});
