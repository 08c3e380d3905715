import { unknownLinks } from "../../../../../src/planning/checks/rules/intent/unknown-links";
import { cells, found, sample } from "../../../../support/plan-rows";

test("says site by site that nothing is known where Links is empty", () => {
  const rows = sample();
  rows.links = [];
  rows.hosts.push({ host: "scan-3", site: "Reading Room" });
  expect(found(unknownLinks, rows)).toEqual([
    "Hosts 5 Host: How scan-1 and 1 more are cabled is not known, so single points are not looked for. Fill Links or Host ports.",
    "Hosts 6 Host: How scan-2 is cabled is not known, so single points are not looked for. Fill Links or Host ports.",
    "Hosts 7 Host: How archive-1 is cabled is not known, so single points are not looked for. Fill Links or Host ports.",
  ]);
});

test("leaves a site with a linked host to another rule, and takes a site without switches", () => {
  const rows = sample();
  rows.hosts.push({ host: "scan-3", site: "Reading Room" });
  expect(cells(unknownLinks, rows)).toEqual([]);
  rows.links = rows.links.slice(0, 1);
  expect(cells(unknownLinks, rows)).toEqual(["Hosts 6 Host", "Hosts 7 Host"]);
  rows.links = [];
  rows.switches = [];
  expect(cells(unknownLinks, rows)).toEqual([]);
});
