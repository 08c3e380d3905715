import { pathsNotKnown } from "../../../../../src/planning/checks/rules/intent/paths-not-known";
import { cells, found, sample } from "../../../../support/plan-rows";

test("names the hosts of which the paths are not known: without an address, and with one in no network of the site", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.64.21.70, 10.64.12.65";
  rows.hosts[1]!.address = null;
  expect(found(pathsNotKnown, rows)).toEqual([
    "Hosts 5 Address: How many paths scan-1 and 1 more have is not known, so one that lacks is not told. Give each port an address of its site.",
  ]);
});

test("says nothing where no array of the site has a port yet", () => {
  const rows = sample();
  rows.hosts[0]!.address = null;
  rows.ports = rows.ports.filter(({ array }) => !String(array).startsWith("rr-"));
  expect(cells(pathsNotKnown, rows)).toEqual([]);
});
