import { initialRows } from "../../src/actions/set-up";
import { siteRows, type Answers } from "../../src/planning/plan/guided";
import { PlanModel } from "../../src/planning/plan/model";
import { tableKeys, type TableRow, type TableRows } from "../../src/planning/plan/schema";
import { planTables } from "../../src/planning/plan/set-up";
import type { SheetPlan } from "../../src/sheet";
import { snapshotOf } from "./plain-workbook";

const crews = ["North", "South", "West"];

/** What one of the sites has: a rack, two networks for data and one for management, two switches, two arrays and two hosts. */
const answers: Answers = {
  racks: "1", rackUnits: "42", rackDepth: "1000", rackLimit: "800", rackCooling: "4000", volts: "230", phases: "1", breaker: "32", dataNetworks: "2", dataMtu: "9000", switches: "2", switchPorts: "24",
  frameBytes: "9216", model: "Alder 24", bays: "24", units: "4", depth: "820", weight: "46", liftKg: "24", liftBy: "lift table", watts: "620", controllers: "2", dataPorts: "2", managementPorts: "1",
  arrays: "2", drives: "24", driveSize: "8 TB", scheme: "RAID 60 9+2", spares: "2", clusterState: "new", fillLimit: "80%", hosts: "2",
};

/** Plans thirty invented sites, each with an installation a working day after the one before, by three crews in turn, and a yearly check once it is closed. */
export function thirtySites(): SheetPlan[] {
  const empty = new PlanModel(snapshotOf(planTables({ sheets: [] }, tableKeys, {})));
  const rows: Record<string, object[]> = {};
  const add = (some: TableRows): void => {
    for (const [key, list] of Object.entries(some)) (rows[key] ??= []).push(...(list as readonly object[]));
  };
  add(initialRows());
  for (let at = 0; at < 30; at += 1) {
    const site = `Branch ${String(at + 1).padStart(2, "0")}`;
    const networks = { dataPrefixes: `10.${100 + at}.1.0/24, 10.${100 + at}.2.0/24`, managementPrefix: `10.${100 + at}.0.0/24`, managementGateway: `10.${100 + at}.0.1` };
    const day = new Date(Date.UTC(2026, 7, 31 + at + 2 * Math.floor(at / 5))).toISOString().slice(0, 10);
    const made = siteRows(empty, { ...answers, ...networks, site, plannedDate: day });
    const job = { ...made.jobs![0]!, id: `J${String(at + 1).padStart(4, "0")}`, plannedDate: day, crew: at === 7 ? null : crews[at % crews.length]! };
    const plannedDate = `2027${day.slice(4)}`;
    const check: TableRow<"jobs"> = { id: `J${String(at + 101).padStart(4, "0")}`, job: `${site} check`, site, procedure: "Yearly check", state: "planned", after: job.job, plannedDate };
    const [models, modelPorts] = at === 0 ? [made.models!, made.modelPorts!] : [[], []];
    add({ ...made, models, modelPorts, jobs: [job, { ...check, crew: crews[(at + 1) % crews.length]! }], assumptions: [] });
  }
  return planTables({ sheets: [] }, tableKeys, rows);
}
