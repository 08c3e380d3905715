import { jobNamed, readCommissioningPlan } from "../planning/commissioning/build";
import { isClosed } from "../planning/commissioning/record";
import { asBuiltChanges, readingsOf } from "../planning/commissioning/reports";
import { checkTabSeal } from "../planning/commissioning/tab";
import type { Changes } from "../planning/plan/changes";
import { noAnswer, quote } from "../planning/text";
import type { WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";
import { readShown } from "./read-plan";
import { addTables } from "./set-up";
import { soundTab, tabInUse } from "./tab-in-use";

/** Adds the table of readings where a closed job read what is used and the workbook lacks it. */
export async function addTableOfReadings(port: WorkbookPort, name: string): Promise<void> {
  const source = readCommissioningPlan(await readShown(port));
  const job = jobNamed(source, name);
  const tab = tabInUse(source, job);
  if (tab !== null && isClosed(tab) && readingsOf(job, tab, source.model).length > 0) await addTables(port, ["readings"]);
}

/**
 * Makes what plans the changes that the accepted records of a job call for: serials, drives, units, firmware, addresses, and what was found of the site.
 *
 * Refuses a job that is not closed, and one whose seal does not hold, for which it wants formulas too (`readWithFormulas`). Hand it to `writeShownChanges` with the
 * changes that were shown.
 */
export function planAsBuilt(name: string): (workbook: WorkbookSnapshot) => Changes {
  return (workbook) => {
    const source = readCommissioningPlan(workbook);
    const job = jobNamed(source, name);
    const tab = soundTab(source, job);
    const refuse = (sentence: string): never => {
      throw noAnswer("Jobs", name, sentence);
    };
    if (tab === null || !isClosed(tab)) return refuse(`Job ${quote(job.job)} is not closed. Close it out first: the plan takes what was accepted and sealed.`);
    const sheet = source.tabSheets.find((one) => one.name === tab.sheet)!;
    if (checkTabSeal(sheet, tab)?.holds !== true) return refuse(`The seal of ${quote(job.job)} does not hold. Check the seal, then reopen the job and close it out again.`);
    return asBuiltChanges(workbook, source, job, tab);
  };
}
