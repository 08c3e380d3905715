import { volumesNotHeld } from "../../../../../src/planning/checks/rules/intent/volumes-not-held";
import { cells, found, sample } from "../../../../support/plan-rows";

test("says of which volumes nobody knows whether they fit", () => {
  const rows = sample();
  rows.volumes[0]!.size = null;
  rows.volumes[1]!.pool = null;
  rows.arrays[4]!.scheme = null;
  expect(found(volumesNotHeld, rows)).toEqual([
    "Volumes 5 Size: Whether scans-live fits is not known, as it has no size. Write one such as 40 TB.",
    "Volumes 6 Pool: Whether scans-index fits is not known, as it names no pool. Write its pool.",
    "Pools 6 Pool: Whether the volumes of Masters fit is not known, as its capacity is not. Fill drives and scheme of its arrays.",
  ]);
});

test("is silent of a pool without volumes, whatever is known of it", () => {
  const rows = sample();
  rows.volumes.length = 0;
  rows.arrays[4]!.scheme = null;
  expect(cells(volumesNotHeld, rows)).toEqual([]);
});
