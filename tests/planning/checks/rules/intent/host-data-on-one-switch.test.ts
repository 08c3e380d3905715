import { hostDataOnOneSwitch } from "../../../../../src/planning/checks/rules/intent/host-data-on-one-switch";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a host that is in one data network, whose ports are all on one switch", () => {
  const rows = sample();
  rows.hosts[2]!.address = "10.64.31.65";
  expect(found(hostDataOnOneSwitch, rows)).toEqual(["Hosts 7 Address: archive-1 reaches cs-array-1 over cs-sw1 alone, by its addresses. Give it one in a data network on another switch."]);
});

test("takes a host in one data network whose ports go to two switches", () => {
  const rows = sample();
  rows.hosts[0]!.address = "10.64.11.65";
  expect(cells(hostDataOnOneSwitch, rows)).toEqual([]);
});
