import { builtInProcedures } from "../src/planning/commissioning/procedure";
import { initialSettings } from "../src/planning/plan/read";
import type { TableRow, TableRows } from "../src/planning/plan/schema";
import { planSetUp } from "../src/planning/plan/set-up";
import type { SheetSnapshot, WorkbookSnapshot } from "../src/sheet";

export const arraysPerSite = 50;
export const portsPerController = 10;
export const hostsPerSite = 150;
export const volumesPerPool = 50;

/**
 * Makes a plan of 50 arrays with 1,000 ports a site, each site with four data networks of two sides, four switches, ten racks and five pools of 50 volumes.
 *
 * A site has 150 hosts, two cards each, in groups of five: at 20 sites 3,000 hosts with 6,000 rows of Host ports, and 5,000 volumes each open to one group.
 */
export function makePlan({ sites, addressed = true }: { readonly sites: number; readonly addressed?: boolean }): TableRows {
  const rows = {
    sites: [], racks: [], feeds: [], networks: [], switches: [], hosts: [], hostPorts: [], links: [], clusters: [], pools: [], arrays: [], ports: [], volumes: [], access: [],
  } as Record<string, Record<string, string | number>[]>;
  const used = new Map<string, number>();
  for (let s = 1; s <= sites; s += 1) {
    const site = `Site ${s}`;
    rows.sites!.push({ site });
    for (const side of ["A", "B"]) rows.feeds!.push({ feed: `S${s}-${side}`, site, source: `S${s} board ${side}`, volts: 400, phases: 3, breakerA: 125 });
    for (let n = 0; n < 4; n += 1) {
      rows.networks!.push({
        network: `s${s}-n${n}`, site, prefix: `10.${s}.${n * 4}.0/22`, gateway: `10.${s}.${n * 4}.1`, mtu: 9000, role: "data", side: n % 2 === 0 ? "A" : "B",
      });
    }
    for (let w = 0; w < 4; w += 1) {
      rows.switches!.push({
        switch: `s${s}-sw${w}`, site, feedA: `S${s}-A`, feedB: `S${s}-B`, watts: 150, networks: [0, 1, 2, 3].map((n) => `s${s}-n${n}`).join(", "),
        ports: "512", keptPorts: "511-512", frameBytes: 9216, side: w % 2 === 0 ? "A" : "B",
      });
    }
    for (let w = 0; w < 4; w += 1) rows.links!.push({ from: `s${s}-sw${w}`, to: `s${s}-sw${(w + 1) % 4}` });
    for (let h = 0; h < hostsPerSite; h += 1) {
      const host = `s${s}-host${h}`;
      rows.hosts!.push({ host, site, groups: `s${s}-group${Math.floor(h / 5)}`, initiatorName: `iqn.2024-05.example.bench:${host}` });
      for (const card of [0, 1]) {
        rows.hostPorts!.push({
          host, card: `c${card}`, network: `s${s}-n${card}`, address: `10.${s}.${card * 4 + 3}.${h + 1}`, mtu: 9000, switch: `s${s}-sw${card}`, switchPort: String(301 + h),
        });
      }
    }
    for (let r = 0; r < 10; r += 1) rows.racks!.push({ rack: `s${s}-r${r}`, site, units: 42, numberedFrom: "bottom", depthMm: 1000, limitKg: 900, coolingW: 9000, outlets: "20 x C13" });
    for (let a = 0; a < arraysPerSite; a += 1) {
      const array = `s${s}-a${a}`;
      const pool = `s${s}-p${a % 5}`;
      if (a < 5) {
        rows.clusters!.push({ cluster: pool, network: `s${s}-n0`, sharedAddress: `10.${s}.3.${200 + a}`, state: "new" });
        rows.pools!.push({ pool, cluster: pool, fillLimit: 0.8, acrossArrays: "3 copies" });
        for (let v = 0; v < volumesPerPool; v += 1) {
          rows.volumes!.push({ volume: `${pool}-v${v}`, pool, size: "4 TB", provisioning: "full", snapshotShare: 0.2 });
          rows.access!.push({ volume: `${pool}-v${v}`, to: `s${s}-group${(a * volumesPerPool + v) % (hostsPerSite / 5)}`, right: "read and write", number: a * volumesPerPool + v });
        }
      }
      rows.arrays!.push({
        id: `A${String((s - 1) * arraysPerSite + a + 1).padStart(4, "0")}`, array, site, model: "M", rack: `s${s}-r${Math.floor(a / 5)}`,
          bottomUnit: 1 + 6 * (a % 5), units: 4, depthMm: 800, weightKg: 40, liftKg: 20,
        liftBy: "lift table", watts: 600, plug: "C14", feedA: `S${s}-A/L${1 + (a % 3)}`, feedB: `S${s}-B/L${1 + (a % 3)}`,
          controllers: "A,B", ports: String(portsPerController), portSharing: "controller",
        drives: 24, driveSize: "8 TB", scheme: "RAID 60 9+2", spares: 2, reserve: 0.1, cluster: pool, clusterOrder: Math.floor(a / 5) + 1, pool, used: "60 TB",
      });
      for (const controller of ["A", "B"]) {
        for (let p = 0; p < portsPerController; p += 1) {
          const network = `s${s}-n${p % 4}`;
          const count = (used.get(network) ?? 1) + 1;
          used.set(network, count);
          const address = `10.${s}.${(p % 4) * 4 + (count >> 8)}.${count & 255}`;
          const to = `s${s}-sw${(p + (controller === "A" ? 0 : 2)) % 4}`;
          const taken = (used.get(to) ?? 0) + 1;
          used.set(to, taken);
          rows.ports!.push({ array, controller, port: String(p), network, ...(addressed ? { address } : {}), mtu: 9000, switch: to, switchPort: String(taken) });
        }
      }
    }
  }
  return { settings: initialSettings(), ...builtInProcedures, ...(rows as unknown as Record<string, readonly TableRow<"ports">[]>) };
}

/** The sheets of a plan as set-up makes them. */
export function workbookOf(rows: TableRows): WorkbookSnapshot {
  return {
    sheets: planSetUp({ sheets: [] }, rows).map((plan): SheetSnapshot => ({
      name: plan.name, visible: true, protected: false, attachments: 0, tables: plan.tables ?? [],
      values: plan.rows.map((row) => row.map((cell) => cell.value ?? null)),
      formulas: plan.rows.map((row) => row.map((cell) => cell.formula ?? null)),
    })),
  };
}
