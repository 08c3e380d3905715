import { portWithoutAddress } from "../../../../../src/planning/checks/rules/addresses/port-without-address";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a row of the Ports table without an address", () => {
  const rows = sample();
  rows.ports[7]!.address = null;
  expect(found(portWithoutAddress, rows)).toEqual(["Ports 12 Address: Port A/1 of rr-array-2 has no address. Write one, or choose Assign addresses."]);
  expect(cells(portWithoutAddress, sample())).toEqual([]);
});
