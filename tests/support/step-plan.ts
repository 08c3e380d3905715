import { buildTabs } from "../../src/actions/build-tabs";
import type { StepRow } from "../../src/planning/commissioning/record";
import { answersOfTab } from "../../src/planning/commissioning/tab";
import type { TableRows } from "../../src/planning/plan/schema";
import type { Scalar } from "../../src/sheet";
import type { JobTab } from "../../src/step/job-file";
import { openDocumentPort } from "../../src/workbook/document/document-port";
import { emptyDocument } from "../../src/workbook/document/workbook-document";
import { writeFile } from "../../src/workbook/xlsx/write-workbook";
import { addPlan, gridPlan, moment, step } from "./commissioning-plan";

/** The small plan with grids, two visits, a hold point with a caution, and a step of every kind of record. */
export function stepPlan(): TableRows {
  const plan = gridPlan();
  return {
    ...plan,
    procedures: plan.procedures!.map((row) => ({ ...row, ...(row.section === "Start" && { visit: "First visit" }), ...(row.section === "Cluster" && { visit: "Second visit" }) })),
    steps: [
      step("T-02", "Start", { do: "Write down where the spare keys of the room are kept.", record: "text" }),
      step("T-03", "Start", { do: "On which day was the room handed over?", record: "date" }),
      step("T-09", "Arrays", {
        do: "Press both supply switches.", expect: "Both lamps lit", sign: "two", holdPoint: "yes",
        caution: "Live parts behind the rear panel: nobody reaches in while cords are plugged. Electrical work follows the local code and is done by people who may do it.",
      }),
      ...plan.steps!,
    ],
  };
}

/** Builds the tabs of a plan into a file, without anything that computes. */
export async function tabFile(rows: TableRows = stepPlan()): Promise<Uint8Array> {
  const { port, finish } = openDocumentPort(emptyDocument, answersOfTab);
  await addPlan(port, rows);
  for await (const { outcome } of buildTabs(port, moment)) if (!outcome.built) throw new Error(outcome.sentence);
  return writeFile(null, emptyDocument, finish());
}

/** Finds a row of steps by the id of its first step and whom it is for. */
export function rowOf({ sections }: JobTab, stepId: string, subject: string): StepRow {
  const rows = sections.flatMap((section) => section.rows);
  const found = rows.find((row) => row.stepId === stepId && row.records[0]!.subject === subject);
  if (found === undefined) throw new Error(`No row ${stepId} ${subject}: ${rows.map((row) => `${row.stepId} ${row.records[0]!.subject}`).join(", ")}`);
  return found;
}

/** What is found in every row of the tab, in order of its numbers: one value a step, four in the rows of the grid of ports. */
export const foundInRows: readonly (Scalar | readonly Scalar[])[] = [
  "With the desk", 46_346, "Yes",
  "Yes", "N-0001", 4, 8,
  "Yes", "n-0002", 8, 7.3, "192.0.2.250",
  ["192.0.2.1", 8972, "none", "Yes"], ["192.0.2.2", 8972, "none", "Yes"], ["192.0.2.3", 8972, "none", "Yes"], ["192.0.2.4", 8972, "none", "Yes"], "Yes",
  "192.0.2.250", "Accepted",
  ["00471", "D-5"], ["1-2", "D-6"], ["=1+1", "D-7"], ["D-4", "D-8"], "Yes",
];
