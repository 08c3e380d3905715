import { keptPortsOf, portsOfSwitch } from "../../../../src/planning/plan/model";
import { modelOf } from "../../../support/plan-model";

const switchOf = (ports: string, keptPorts = "") => modelOf({ switches: [{ switch: "s", ports, keptPorts }] }).rows("switches")[0]!;

test.each([
  ["3", ["1", "2", "3"]],
  ["1-3, x1", ["1", "2", "3", "x1"]],
  ["1/0/1-1/0/2", ["1/0/1-1/0/2"]],
  ["eth1-3", ["eth1", "eth2", "eth3"]],
  ["", null],
  ["24-1", null],
  ["1-99999", null],
])("a switch with the ports %p has %j", (text, ports) => {
  expect(portsOfSwitch(switchOf(text))).toEqual(ports);
});

test.each([["23, X1", ["23", "x1"]], ["23-24", ["23", "24"]], ["", []], ["24-23", null]])("a switch that keeps %p keeps %j", (text, kept) => {
  const names = keptPortsOf(switchOf("24", text));
  expect(names === null ? null : [...names]).toEqual(kept);
});
