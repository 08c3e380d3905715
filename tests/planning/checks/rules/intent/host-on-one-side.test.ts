import { hostOnOneSide } from "../../../../../src/planning/checks/rules/intent/host-on-one-side";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a host with addresses on one side alone", () => {
  const rows = sample();
  rows.hosts[2]!.address = "fd6b:41c2:9e07:31::41";
  expect(found(hostOnOneSide, rows)).toEqual(["Hosts 7 Address: archive-1 has addresses on side A alone: when that fails it loses its disks. Give it one in cs-data-2 too."]);
});

test("takes a host on both sides, also over two address families, one without an address, and sites without sides", () => {
  const rows = sample();
  rows.hosts[2]!.address = "10.64.31.65, fd6b:41c2:9e07:32::41";
  rows.hosts[0]!.address = "10.64.11.65";
  rows.hosts[1]!.address = null;
  expect(cells(hostOnOneSide, rows)).toEqual([]);
});
