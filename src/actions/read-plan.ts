import { isTabOf, withTabs, type CommissioningPlan } from "../planning/commissioning/build";
import { headRows, isTab, mayBeInUse } from "../planning/commissioning/tab";
import type { WorkbookSnapshot } from "../sheet";
import type { WorkbookPort } from "../workbook/port";

/** What is read beside the planning tables and the heads of tabs. */
interface Beside {
  /** Ids of jobs whose tabs are read as the tables are. */
  readonly jobIds?: readonly string[];
  /** Leaves out formulas, which a plan is read without. */
  readonly only?: "values";
}

/**
 * Reads the planning tables, and of commissioning tabs no more than tells whose they are: those of a hundred jobs are sixty megabytes.
 *
 * Other sheets are read too, as tables may stand on them that the host does not know.
 */
export function readPlanSheets(port: WorkbookPort, { jobIds = [], only }: Beside = {}): Promise<WorkbookSnapshot> {
  return port.read(({ hasTables }) => hasTables || { rows: headRows, isWanted: (head) => !isTab(head) || jobIds.some((id) => isTabOf(head, id)) }, only);
}

/** Reads the values of the planning tables, for what looks at no tab. */
export function readPlanValues(port: WorkbookPort): Promise<WorkbookSnapshot> {
  return readPlanSheets(port, { only: "values" });
}

/** Reads what the sheets show, but for tabs of earlier builds, at which nobody but the next build looks: the values, without their formulas. */
export function readShown(port: WorkbookPort): Promise<WorkbookSnapshot> {
  return port.read((sheet) => sheet.hasTables || mayBeInUse(sheet), "values");
}

/** Reads what `readShown` reads with its formulas, without which nobody can tell whether the seal of a tab holds. */
export function readWithFormulas(port: WorkbookPort): Promise<WorkbookSnapshot> {
  return port.read((sheet) => sheet.hasTables || mayBeInUse(sheet));
}

/** Reads tabs of a plan by the names of their sheets; without any the plan stays as it is. */
export async function withTabsNamed(port: WorkbookPort, plan: CommissioningPlan, names: readonly string[]): Promise<CommissioningPlan> {
  return names.length === 0 ? plan : withTabs(plan, await port.read(names));
}
