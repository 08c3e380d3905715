import { dataOnOneSwitch } from "../../../../../src/planning/checks/rules/intent/data-on-one-switch";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an array whose data ports share a switch, though its management ports go to another", () => {
  const rows = sample();
  rows.ports.slice(0, 6).forEach((port, at) => Object.assign(port, { switch: port.network === "mgmt" ? "rr-sw2" : "rr-sw1", switchPort: String(at + 11) }));
  expect(found(dataOnOneSwitch, rows)).toEqual(["Arrays 5 Array: All data ports of rr-array-1 go to rr-sw1: when it fails no host reaches the data. Cable some to another switch."]);
});

test("takes one data port on another switch, a lone data port, and an array on one switch, of which another rule tells", () => {
  const rows = sample();
  rows.ports.slice(0, 5).forEach((port, at) => Object.assign(port, { switch: port.network === "mgmt" ? "rr-sw2" : "rr-sw1", switchPort: String(at + 11) }));
  Object.assign(rows.ports[4]!, { switch: "rr-sw2" });
  expect(cells(dataOnOneSwitch, rows)).toEqual([]);
  for (const port of rows.ports.slice(0, 6)) port.switch = "rr-sw1";
  expect(cells(dataOnOneSwitch, rows)).toEqual([]);
});
