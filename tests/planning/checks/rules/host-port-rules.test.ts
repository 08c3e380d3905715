import { rules } from "../../../../src/planning/checks";
import type { Scalar } from "../../../../src/sheet";
import { found, mends, sample, type EditableRows } from "../../../support/plan-rows";

const first = { host: "scan-1", card: "1", network: "rr-data-1", address: "10.64.11.65", mtu: 9000, switch: "rr-sw1", switchPort: "11" };
const second = { host: "scan-1", card: "2", network: "rr-data-2", address: "10.64.12.65", mtu: 9000, switch: "rr-sw2", switchPort: "11" };

/** The sample with both ports of scan-1 in Host ports, of which the first is changed. */
function withPort(change: Record<string, Scalar>): EditableRows {
  return { ...sample(), hostPorts: [{ ...first, ...change }, { ...second }] };
}

const ruleNamed = (name: string) => rules.find((rule) => rule.name === name)!;

test("a host with both ports in Host ports has nothing to stop or warn about", () => {
  const rows = withPort({});
  expect(rules.filter(({ weight }) => weight !== "note").flatMap((rule) => found(rule, rows))).toEqual([]);
});

test.each<[string, Record<string, Scalar>, string]>([
  ["not-an-address", { address: "10.64.11" }, "Host ports 5 Address"],
  ["address-outside-network", { address: "10.64.12.66" }, "Host ports 5 Address"],
  ["address-twice", { address: "10.64.11.3" }, "Host ports 5 Address"],
  ["network-or-broadcast", { address: "10.64.11.255" }, "Host ports 5 Address"],
  ["port-without-address", { address: null }, "Host ports 5 Address"],
  ["port-mtu", { mtu: 1500 }, "Host ports 5 MTU"],
  ["unknown-name", { host: "scan-7" }, "Host ports 5 Host"],
  ["unknown-name", { switch: "rr-sw9" }, "Host ports 5 Switch"],
  ["other-site", { switch: "bi-sw1" }, "Host ports 5 Switch"],
  ["other-site", { network: "bi-data-1" }, "Host ports 5 Network"],
  ["port-without-switch", { switch: null, switchPort: null }, "Host ports 5 Switch"],
  ["switch-port-twice", { switchPort: "1" }, "Host ports 5 Switch port"],
  ["switch-port-beyond", { switchPort: "99" }, "Host ports 5 Switch port"],
  ["switch-port-kept", { switchPort: "23" }, "Host ports 5 Switch port"],
  ["initiator-name", { initiatorName: "scan-1" }, "Host ports 5 Initiator name"],
  ["initiator-twice", { initiatorName: "iqn.2024-05.example.thornmere:scan-2" }, "Host ports 5 Initiator name"],
  ["host-on-one-switch", { switch: "rr-sw2", switchPort: "12" }, "Hosts 5 Host"],
])("%s sees a port of a host with %j", (name, change, cell) => {
  expect(found(ruleNamed(name), withPort({})).filter((one) => one.startsWith("Host"))).toEqual([]);
  expect(found(ruleNamed(name), withPort(change)).map((one) => one.split(":")[0])).toContain(cell);
});

test("wrong-side sees a side that is not the network's, and a switch of the other side", () => {
  const rows = sample();
  rows.hostPorts = [{ host: "archive-1", network: "cs-data-1", side: "B", switch: "cs-sw1" }, { host: "archive-1", network: "cs-data-1", switch: "cs-sw2" }];
  expect(found(ruleNamed("wrong-side"), rows).map((one) => one.split(":")[0])).toEqual(["Host ports 5 Switch", "Host ports 6 Switch", "Host ports 5 Side"]);
  expect(mends(ruleNamed("wrong-side"), rows)).toEqual(["Host ports 5 Side: A"]);
});

test("network-too-small counts a port of a host that has no address yet", () => {
  const rows = sample();
  rows.networks.push({ network: "two", site: "Reading Room", prefix: "10.70.0.0/30", gateway: "none", role: "data" });
  rows.hostPorts = ["1", "2", "3"].map((card) => ({ host: "scan-1", card, network: "two" }));
  expect(found(ruleNamed("network-too-small"), rows)).toEqual(["Networks 15 Prefix: 10.70.0.0/30 of two has 2 addresses to give, 3 are needed. Give it a larger prefix."]);
  rows.hostPorts.pop();
  expect(found(ruleNamed("network-too-small"), rows)).toEqual([]);
});
