import { stackOfSites } from "../../../../../src/planning/checks/rules/intent/stack-of-sites";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds one stack at two sites, however it is spelt", () => {
  const rows = sample();
  rows.switches[0]!.stack = "core";
  rows.switches[2]!.stack = "Core";
  expect(found(stackOfSites, rows)).toEqual(["Switches 7 Stack: Stack Core is of rr-sw1 at Reading Room too, and bi-sw1 is at Bindery. Give each stack a name of its own."]);
});

test("takes two switches of one site, and stacks of two names", () => {
  const rows = sample();
  rows.switches.forEach((row) => (row.stack = `core ${String(row.site)}`));
  expect(cells(stackOfSites, rows)).toEqual([]);
});
