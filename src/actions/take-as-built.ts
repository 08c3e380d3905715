import { jobNamed, readCommissioningPlan } from "../planning/commissioning/build";
import { asBuiltChanges } from "../planning/commissioning/reports";
import type { Changes } from "../planning/plan/changes";
import type { WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { writeShownChanges } from "./write-changes";

/** Lists what the accepted records of a job would change in the plan: serials, units, firmware and addresses. Nothing is written. */
export async function previewAsBuilt(port: WorkbookPort, name: string): Promise<Changes> {
  return planAsBuilt(name)(await port.read());
}

/** Writes the changes that were shown, provided the workbook still asks for exactly these. */
export async function takeAsBuilt(port: WorkbookPort, name: string, shown: Changes): Promise<void> {
  await writeShownChanges(port, shown, planAsBuilt(name));
}

/** Makes what plans the changes that the accepted records of a job call for. */
export function planAsBuilt(name: string): (workbook: WorkbookSnapshot) => Changes {
  return (workbook) => {
    const source = readCommissioningPlan(workbook);
    return asBuiltChanges(workbook, source, jobNamed(source, name));
  };
}
