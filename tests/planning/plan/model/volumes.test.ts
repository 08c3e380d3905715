import { PlanModel } from "../../../../src/planning/plan/model";
import { sample, workbookWith, type EditableRows } from "../../../support/plan-rows";

const modelOf = (rows: EditableRows) => new PlanModel(workbookWith(rows));

test("adds up what the volumes of a pool take, snapshots rounded up to a whole byte", () => {
  const rows = sample();
  rows.volumes.push({ volume: "odd", pool: "scans", size: "0.000000000003 TB", provisioning: "thin", snapshotShare: 0.5 }, { volume: "open", pool: "Scans" });
  const [scans, masters] = modelOf(rows).volumes.demands();
  // 80 TB and a fifth, 4 TB and a half; the thin one is 3 bytes and half of them.
  expect(scans).toMatchObject({ full: 102_000_000_000_000n, promised: 102_000_000_000_005n });
  expect(masters).toMatchObject({ full: 0n, promised: 165_000_000_000_000n });
});

test("finds the hosts of a name: one host, or those of a group, without case", () => {
  const { volumes } = modelOf(sample());
  const names = (name: string) => volumes.hostsOf(name).map(({ host }) => host);
  expect([names("SCANNING"), names("scan-2"), names("nobody"), names("")]).toEqual([["scan-1", "scan-2"], ["scan-2"], [], []]);
});

test("tells hosts of one group from those that have none in common", () => {
  const rows = sample();
  rows.hosts[2]!.groups = "nightly, Scanning";
  const { volumes } = modelOf(rows);
  const hosts = [...volumes.groups().get("scanning")!];
  expect(hosts.map(({ host }) => host)).toEqual(["scan-1", "scan-2", "archive-1"]);
  expect(volumes.areOneGroup(hosts)).toBe(true);
  const apart = modelOf(sample()).volumes;
  expect(apart.areOneGroup([...apart.hostsOf("scanning"), ...apart.hostsOf("archive-1")])).toBe(false);
  expect(apart.areOneGroup([])).toBe(true);
});
