import { jobNamed, readCommissioningPlan } from "../planning/commissioning/build";
import { asBuiltChanges } from "../planning/commissioning/reports";
import type { Changes } from "../planning/plan/changes";
import type { WorkbookSnapshot } from "../sheet";
import { soundTab } from "./tab-in-use";

/**
 * Makes what plans the changes that the accepted records of a job call for: serials, units, firmware and addresses.
 *
 * Hand it to `writeShownChanges` with the changes that were shown.
 */
export function planAsBuilt(name: string): (workbook: WorkbookSnapshot) => Changes {
  return (workbook) => {
    const source = readCommissioningPlan(workbook);
    const job = jobNamed(source, name);
    soundTab(source, job);
    return asBuiltChanges(workbook, source, job);
  };
}
