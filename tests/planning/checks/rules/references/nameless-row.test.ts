import { namelessRow } from "../../../../../src/planning/checks/rules/references/nameless-row";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a row that holds something but not what it is about", () => {
  const rows = sample();
  rows.racks[1]!.rack = null;
  rows.links[2]!.to = null;
  expect(cells(namelessRow, rows)).toEqual(["Racks 6 Rack", "Links 7 To"]);
});

test("passes over a blank row in the middle", () => {
  const rows = sample();
  rows.hosts.splice(1, 0, {});
  expect(cells(namelessRow, rows)).toEqual([]);
});
