import { hostPaths } from "../../../../../src/planning/checks/rules/intent/host-paths";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a host in management alone, and one with fewer paths than the others of its site", () => {
  const rows = sample();
  rows.hosts.push({ host: "scan-3", site: "Reading Room", address: "10.64.12.66" }, { host: "scan-4", site: "Reading Room", address: "10.64.0.66" });
  expect(found(hostPaths, rows)).toEqual([
    "Hosts 8 Address: scan-3 has 2 paths to rr-array-1, other hosts of its site 4. Give it the addresses it lacks.",
    "Hosts 9 Address: scan-4 has no address in a data network of rr-array-1, so it has no path to it. Give it one.",
  ]);
});

test("takes hosts with as many paths, a routed one, and arrays without data ports", () => {
  const rows = sample();
  rows.hosts.push({ host: "scan-3", site: "Reading Room", address: "10.64.11.66, 10.64.12.66" }, { host: "far-1", site: "Bindery", address: "10.80.0.1" });
  expect(cells(hostPaths, rows)).toEqual([]);
});
