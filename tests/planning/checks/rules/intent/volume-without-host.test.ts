import { volumeWithoutHost } from "../../../../../src/planning/checks/rules/intent/volume-without-host";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a volume that no row of Access names", () => {
  const rows = sample();
  rows.access[2]!.volume = "MASTERS";
  expect(cells(volumeWithoutHost, rows)).toEqual([]);
  rows.access.pop();
  expect(found(volumeWithoutHost, rows)).toEqual(["Volumes 7 Volume: No host may open masters. Write a row in Access, or take the volume out."]);
});
