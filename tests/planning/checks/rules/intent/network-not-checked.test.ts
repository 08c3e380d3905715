import { checkPlan, rules } from "../../../../../src/planning/checks";
import { networkNotChecked } from "../../../../../src/planning/checks/rules/intent/network-not-checked";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

/** The sample with the data networks of the Reading Room of another kind: port names for addresses, no prefix. */
function withFabric() {
  const rows = sample();
  for (const network of rows.networks.slice(0, 2)) Object.assign(network, { kind: "other", prefix: null, gateway: null, mtu: 2112, reserved: null });
  for (const port of rows.ports.slice(0, 12)) if (port.network !== "mgmt") Object.assign(port, { address: "50:00:00:00:00:00:00:01", mtu: 1 });
  Object.assign(rows.hosts[0]!, { address: null, initiatorName: null });
  rows.hostPorts.push(
    { host: "scan-1", card: "f1", initiatorName: "10:00:00:00:00:00:00:01", network: "rr-data-1", switch: "rr-sw1", switchPort: "11" },
    { host: "scan-1", card: "f2", initiatorName: "10:00:00:00:00:00:00:02", network: "rr-data-2", switch: "rr-sw2", switchPort: "11" },
  );
  return rows;
}

test("notes each network whose addresses are not checked", () => {
  const rows = sample();
  rows.networks[1]!.kind = "other";
  expect(found(networkNotChecked, rows)).toEqual(["Networks 6 Kind: rr-data-2 is of kind other: its addresses, MTU and gateway are not checked. Check them by the guide of its switches."]);
});

test("says nothing of a network of IP, by its word or by default", () => {
  const rows = sample();
  rows.networks[1]!.kind = "IP";
  expect(cells(networkNotChecked, rows)).toEqual([]);
});

test("no rule speaks of addresses, MTU or gateways of such a network, and cabling and paths are checked as before", () => {
  const findings = (rows: ReturnType<typeof sample>) => checkPlan(workbookWith(rows), rules, "2026-06-01").filter(({ weight }) => weight !== "note").map(({ rule }) => rule);
  expect(findings(withFabric())).toEqual([]);
  const rows = withFabric();
  rows.ports[3]!.switch = "bi-sw1";
  rows.hostPorts.pop();
  expect(findings(rows)).toEqual(expect.arrayContaining(["other-site", "host-on-one-switch"]));
});
