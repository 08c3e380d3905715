import { rowWithoutSite } from "../../../../../src/planning/checks/rules/references/row-without-site";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds the first row of each table that says no site, and how many more there are", () => {
  const rows = sample();
  rows.hosts[0]!.site = null;
  rows.hosts[2]!.site = null;
  rows.feeds[1]!.site = null;
  expect(found(rowWithoutSite, rows)).toEqual([
    "Feeds 6 Site: RR-B of Feeds says no site, so checks of a site pass over it. Write it.",
    "Hosts 5 Site: scan-1 and 1 more of Hosts say no site, so checks of a site pass over them. Write it.",
  ]);
});

test("takes networks and clusters, which may be of every site, and a row without a name, of which another rule tells", () => {
  const rows = sample();
  rows.networks[0]!.site = null;
  rows.hosts.push({ address: "10.64.11.99" });
  expect(cells(rowWithoutSite, rows)).toEqual([]);
});
