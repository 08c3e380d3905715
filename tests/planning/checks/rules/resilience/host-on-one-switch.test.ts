import { hostOnOneSwitch } from "../../../../../src/planning/checks/rules/resilience/host-on-one-switch";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a host with one link, and one with two links to one switch", () => {
  const rows = sample();
  rows.links.splice(1, 1);
  rows.links.find(({ from, to }) => from === "scan-2" && to === "bi-sw2")!.to = "bi-sw1";
  expect(cells(hostOnOneSwitch, rows)).toEqual(["Hosts 5 Host", "Hosts 6 Host"]);
});

test("takes links to two switches, whichever end the host stands at", () => {
  const rows = sample();
  Object.assign(rows.links[0]!, { from: "rr-sw1", to: "scan-1" });
  expect(cells(hostOnOneSwitch, rows)).toEqual([]);
});
