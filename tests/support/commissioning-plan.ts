import type { BuildMoment } from "../../src/planning/commissioning/build";
import type { TableRow, TableRows } from "../../src/planning/plan/schema";
import { planSetUp } from "../../src/planning/plan/set-up";
import type { Scalar, WorkbookSnapshot } from "../../src/sheet";
import type { WorkbookPort } from "../../src/workbook/port";
import { workbookOf } from "./plain-workbook";

/** A moment for builds; the first build of a job is known by its instant. */
export const moment: BuildMoment = { madeAt: "2026-03-02 09:15", instant: "2026-03-02T09:15:00.000Z", planName: "north.xlsx" };

export const jobName = "North hall";

/** A step of the small procedure, with what most of them share. */
export function step(stepId: string, section: string, more: Partial<TableRow<"steps">> = {}): TableRow<"steps"> {
  return { stepId, procedure: "Try out", section, do: `Do ${stepId}`, record: "tick", required: "yes", sign: "one", minutes: 5, ...more };
}

const array = {
  site: "North hall", model: "Elm 6", rack: "N1", units: 2, controllers: "A,B", ports: "2", drives: 6, driveSize: "4 TB", scheme: "RAID 6",
  spares: 0, reserve: 0, cluster: "North", pool: "North", feedA: "N-A", feedB: "N-B", watts: 300,
} as const;

/** A plan of one site, two arrays of a new cluster and one job, small enough to be built often. */
export function smallPlan(): TableRows {
  return {
    settings: [],
    sites: [{ site: "North hall", room: "N.1", contact: "Desk", timeServers: "192.0.2.5" }],
    racks: [{ rack: "N1", site: "North hall", units: 42, numberedFrom: "bottom", depthMm: 900 }],
    feeds: [
      { feed: "N-A", site: "North hall", source: "UPS", volts: 230, phases: 1, breakerA: 16 },
      { feed: "N-B", site: "North hall", source: "Mains", volts: 230, phases: 1, breakerA: 16 },
    ],
    networks: [{ network: "data", site: "North hall", prefix: "192.0.2.0/24", gateway: "none", mtu: 9000 }],
    clusters: [{ cluster: "North", network: "data", sharedAddress: "192.0.2.250", state: "new" }],
    pools: [{ pool: "North", cluster: "North", fillLimit: 0.8, acrossArrays: "none" }],
    arrays: [
      { ...array, id: "A0001", array: "n-1", serial: "N-0001", bottomUnit: 4, clusterOrder: 1 },
      { ...array, id: "A0002", array: "n-2", serial: "N-0002", bottomUnit: 8, clusterOrder: 2 },
    ],
    ports: [
      { array: "n-1", controller: "A", port: "0", network: "data", address: "192.0.2.1" },
      { array: "n-1", controller: "B", port: "0", network: "data", address: "192.0.2.2" },
      { array: "n-2", controller: "A", port: "0", network: "data", address: "192.0.2.3" },
      { array: "n-2", controller: "B", port: "0", network: "data", address: "192.0.2.4" },
    ],
    prompts: [{ model: "Elm 6", order: 1, prompt: "Name", value: "{{Array}}" }],
    jobs: [{ id: "J0001", job: jobName, site: "North hall", procedure: "Try out", state: "planned" }],
    procedures: [
      { procedure: "Try out", section: "Start", forEach: "site" },
      { procedure: "Try out", section: "Arrays", forEach: "array" },
      { procedure: "Try out", section: "Ports", forEach: "port" },
      { procedure: "Try out", section: "Cluster", forEach: "cluster" },
      { procedure: "Try out", section: "End", forEach: "site" },
    ],
    steps: [
      step("T-01", "Start", { expect: "Agreed with {{Contact}}" }),
      step("T-10", "Arrays", { expect: "{{Array.Serial}}", record: "serial" }),
      step("T-11", "Arrays", { expect: "{{Bottom unit}}", record: "number" }),
      step("T-12", "Arrays", { expect: "{{Usable}}", record: "size", unit: "TB", tolerancePercent: 2 }),
      step("T-13", "Arrays", { when: "Cluster act = join", expect: "{{Shared address}}", record: "address" }),
      step("T-20", "Ports", { expect: "{{Address}}", record: "address" }),
      step("T-21", "Ports", { expect: "{{Ping size}}", record: "number", unit: "bytes" }),
      step("T-30", "Cluster", { expect: "{{Shared address}}", record: "address" }),
      step("T-90", "End", { sign: "two", expect: "Accepted", record: "choice:Accepted|Refused" }),
    ],
  };
}

/** The small plan with its ports and drives as grids. */
export function gridPlan(): TableRows {
  const small = smallPlan();
  return {
    ...small,
    arrays: small.arrays!.map((row) => ({ ...row, drives: 4 })),
    procedures: [
      ...small.procedures!.map((row) => (row.section === "Ports" ? { ...row, shownAs: "grid" as const } : row)),
      { procedure: "Try out", section: "Drives", forEach: "drive", shownAs: "grid" },
    ],
    steps: [
      ...small.steps!,
      step("T-22", "Ports", { expect: "{{Gateway}}", record: "text" }),
      step("T-23", "Ports", { expect: "Link up", sign: "two" }),
      step("T-40", "Drives", { record: "serial", minutes: 1 }),
    ],
  };
}

/** Lays a plan out as cells, without the blank rows and formats that set-up adds: tests that build often stay quick. */
export function planSheets(rows: TableRows): { readonly name: string; readonly values: readonly (readonly Scalar[])[] }[] {
  return planSetUp({ sheets: [] }, rows).map(({ name, rows: cells }) => ({
    name,
    values: cells.map((line) => line.map(({ value = null }) => value)).filter((line, row) => row < 4 || line.some((value) => value !== null)),
  }));
}

/** Writes a plan into a workbook. */
export async function addPlan(port: WorkbookPort, rows: TableRows): Promise<void> {
  await port.apply(
    planSheets(rows).map(({ name, values }) => {
      const cells = values.map((line) => line.map((value) => ({ value })));
      return { kind: "add-sheet", plan: { name, rows: cells, styles: {}, columnWidths: [] } };
    }),
  );
}

/** Reads a plan as a workbook that has nothing else in it. */
export function planWorkbook(rows: TableRows): WorkbookSnapshot {
  return workbookOf(Object.fromEntries(planSheets(rows).map(({ name, values }) => [name, values])));
}

/** What a person types into the tab of the small plan, everything as expected and signed. */
export const complete: Readonly<Record<string, Readonly<Record<string, Scalar>>>> = {
  "T-01/site": { found: "Yes", by: "AB" },
  "T-10/A0001": { found: "n-0001", by: "AB" },
  "T-11/A0001": { found: 4, by: "AB" },
  "T-12/A0001": { found: 15.9, by: "AB" },
  "T-10/A0002": { found: "N-0002", by: "AB" },
  "T-11/A0002": { found: 8, by: "AB" },
  "T-12/A0002": { found: 16_000_000_000_000, unit: "bytes", by: "AB" },
  "T-13/A0002": { found: "192.0.2.250", by: "AB" },
  "T-20/A0001.A.0": { found: "192.0.2.1", by: "AB", done: 46_083 },
  "T-21/A0001.A.0": { found: 8972, by: "AB" },
  "T-20/A0001.B.0": { found: "192.0.2.2", by: "AB" },
  "T-21/A0001.B.0": { found: 8972, by: "AB" },
  "T-20/A0002.A.0": { found: "192.0.2.3", by: "AB" },
  "T-21/A0002.A.0": { found: 8972, by: "AB" },
  "T-20/A0002.B.0": { found: "192.0.2.4", by: "AB" },
  "T-21/A0002.B.0": { found: "Not applicable", by: "AB", note: "Port left dark" },
  "T-30/A0001.cluster": { found: "192.0.2.250", by: "AB" },
  "T-90/site": { found: "Accepted", by: "AB", witness: "EF" },
};
