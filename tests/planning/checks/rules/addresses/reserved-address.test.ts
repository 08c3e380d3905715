import { reservedAddress } from "../../../../../src/planning/checks/rules/addresses/reserved-address";
import { cells, sample } from "../../../../support/plan-rows";

test("finds a port in a range that its network keeps back", () => {
  const rows = sample();
  rows.ports[2]!.address = "10.64.0.9";
  expect(cells(reservedAddress, rows)).toEqual(["Ports 7 Address"]);
});

test("takes the address beside the range, and a host inside it", () => {
  const rows = sample();
  rows.ports[2]!.address = "10.64.0.30";
  expect(cells(reservedAddress, rows)).toEqual([]);
});
