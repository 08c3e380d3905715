import { linkEnds } from "../../../../../src/planning/checks/rules/references/link-ends";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a link from a switch to itself, however it is spelt, and one between two hosts", () => {
  const rows = sample();
  rows.links[2]!.to = "RR-SW1";
  rows.links[3]!.to = "scan-1";
  expect(found(linkEnds, rows)).toEqual([
    "Links 7 To: This link runs from rr-sw1 to itself, so no path leads over it. Write the switch at its other end.",
    "Links 8 To: scan-2 and scan-1 are both hosts, so no path leads over it. Write the switch at its other end.",
  ]);
});

test("takes two links between the same two switches", () => {
  const rows = sample();
  rows.links.push({ ...rows.links[2]! });
  expect(cells(linkEnds, rows)).toEqual([]);
});
