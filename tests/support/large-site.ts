import { initialRows } from "../../src/actions/set-up";
import { assignPlanAddresses, proposeCabling } from "../../src/planning/assignment";
import { siteRows, type Answers } from "../../src/planning/plan/guided";
import { PlanModel } from "../../src/planning/plan/model";
import { tableKeys, type TableRows } from "../../src/planning/plan/schema";
import { planTables } from "../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../src/sheet";
import { carryOut } from "./plan-changes";
import { snapshotOf } from "./plain-workbook";

const bays = 24;

/** A site as large as one job is: four arrays of 24 drives, two switches, three hosts. */
const answers: Answers = {
  site: "Map Store", room: "Basement, room 0.12", contact: "Duty librarian, front desk", timeServers: "10.9.0.5, 10.9.0.6", nameServers: "10.9.0.5",
  alertsTo: "storage-alerts@thornmere.example", access: "Ramp at the north door; lift carries 600 kg; book the corridor a day ahead.",
  racks: "2", rackUnits: "42", rackDepth: "1000", rackLimit: "800", rackCooling: "4000", volts: "230", phases: "1", breaker: "32", sourceA: "UPS", sourceB: "Mains board",
  dataNetworks: "2", dataPrefixes: "10.64.81.0/24, 10.64.82.0/24", dataVlans: "181, 182", dataMtu: "9000", managementPrefix: "10.64.80.0/24", managementGateway: "10.64.80.1",
  switches: "2", switchPorts: "48", frameBytes: "9216", model: "Alder 24", bays: String(bays), units: "4", depth: "820", weight: "46", liftKg: "24", liftBy: "lift table", watts: "620",
  controllers: "2", dataPorts: "2", managementPorts: "1", arrays: "4", drives: String(bays), driveSize: "8 TB", scheme: "RAID 60 9+2", spares: "2", clusterState: "new", fillLimit: "80%",
  hosts: "3", plannedDate: "2026-12-01",
};

/** What may be otherwise at that site. */
export interface LargeSite {
  readonly cluster?: string;
  readonly paper?: string;
  readonly joinAddsCapacity?: "yes" | "no" | null;
  /** Answers that are others than those of four arrays, such as how many there are. */
  readonly other?: Answers;
}

/** Plans that site, with every serial, address and cable; its cluster is new, or one that holds live data already. */
export function largeSite({ cluster = "new", paper = "A4", joinAddsCapacity = null, other = {} }: LargeSite = {}): WorkbookSnapshot {
  const empty = snapshotOf(planTables({ sheets: [] }, tableKeys, {}));
  const rows = siteRows(new PlanModel(empty), { ...answers, ...other, clusterState: cluster });
  const facts = { guide: "Sample row: invented", plug: "C14", supplies: 2, supplySwitch: "no", consoleLine: "115200 8N1", warmUpHours: 24, startUpMinutes: 15, paths: "preferred" } as const;
  const initial = initialRows();
  const arrays = rows.arrays!.map((array, index) => ({ ...array, id: `A${String(index + 1).padStart(4, "0")}`, serial: `TML-24-${101 + index}`, warrantyUntil: "2031-09-30" }));
  const plan: TableRows = {
    ...initial,
    settings: initial.settings!.map((row) => (row.setting === "Paper" ? { ...row, value: paper } : row)),
    ...rows,
    models: rows.models!.map((model) => ({ ...model, ...facts, joinAddsCapacity })),
    arrays,
    drives: arrays.flatMap(({ array = null }, shelf) =>
      Array.from({ length: bays }, (_, at) => ({ array, bay: at + 1, serial: `TMD8-${shelf + 1}${String(at + 1).padStart(2, "0")}-4471`, size: "8 TB" }))),
    hosts: rows.hosts!.map((host, index) => ({ ...host, initiatorName: `iqn.2026-11.example.thornmere:map-store-${index + 1}` })),
    volumes: ["Scans", "Masters", "Index"].map((volume) => ({ volume, pool: "Map Store pool", size: "40 TB", provisioning: "full" })),
    prompts: [
      { model: "Alder 24", order: 1, prompt: "Name of this array", value: "{{Array}}" },
      { model: "Alder 24", order: 2, prompt: "Shared address", value: "{{Shared address}}" },
      { model: "Alder 24", order: 3, prompt: "Time servers", value: "{{Time servers}}" },
      { model: "Alder 24", order: 4, prompt: "Administrator password", value: "vault:thornmere/arrays/administrator" },
    ],
    jobs: rows.jobs!.map((job) => ({ ...job, id: "J0001", longestStandstill: 60 })),
    assumptions: [],
  };
  const book = snapshotOf(planTables({ sheets: [] }, tableKeys, plan));
  return [assignPlanAddresses, proposeCabling].reduce((planned, propose) => carryOut(planned, propose(planned)), book);
}
