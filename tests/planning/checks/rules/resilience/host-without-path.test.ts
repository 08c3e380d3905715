import { hostWithoutPath } from "../../../../../src/planning/checks/rules/resilience/host-without-path";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a host without a link, and one that no chain of links joins to an array", () => {
  const rows = sample();
  rows.hosts.push({ host: "scan-9", site: "Bindery" });
  rows.switches.push({ switch: "rr-sw3", site: "Reading Room", networks: "rr-data-1" });
  rows.hosts[0]!.host = "scan-0";
  rows.links = rows.links.map((row) => (row.from === "scan-1" ? { from: "scan-0", to: "rr-sw3" } : row));
  expect(cells(hostWithoutPath, rows)).toEqual(["Hosts 8 Host", "Hosts 5 Host", "Hosts 5 Host"]);
});

test("takes a path over another switch, and asks nothing before there are links", () => {
  const rows = sample();
  rows.switches.push({ switch: "rr-sw3", site: "Reading Room", networks: "rr-data-1" });
  rows.links = [...rows.links.filter(({ from }) => from !== "scan-1"), { from: "rr-sw3", to: "rr-sw1" }, { from: "rr-sw3", to: "scan-1" }];
  expect(cells(hostWithoutPath, rows)).toEqual([]);
  rows.links = [];
  expect(cells(hostWithoutPath, rows)).toEqual([]);
});

test("says what is missing", () => {
  const rows = sample();
  rows.hosts.push({ host: "scan-9", site: "Bindery" }, { host: null, site: "Bindery" });
  rows.switches.push({ switch: "bi-sw3", site: "Bindery", networks: "mgmt" });
  rows.links = rows.links.map((row) => (row.from === "scan-2" ? { from: "scan-2", to: "bi-sw3" } : row));
  const nothing = (array: string): string => `Hosts 6 Host: Nothing joins scan-2 to ${array}, which is at the same site. Add the missing link or cable.`;
  expect(found(hostWithoutPath, rows)).toEqual(["Hosts 8 Host: scan-9 has no link to a switch, so it reaches no array. Add its links.", nothing("bi-array-1"), nothing("bi-array-2")]);
});
