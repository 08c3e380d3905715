import { sameSheetName } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import { quote } from "../../text";
import type { TabFamily } from "../tab";

/** Says what a build does about the tabs that are there: a renamed one gets its name back, what is not ours stays. */
export function remarksOnTabs({ current }: TabFamily, name: string): string[] {
  if (current === null) return [];
  const remarks: string[] = [];
  if (!sameSheetName(current.sheet, name)) remarks.push(`The tab was called ${quote(current.sheet)}. It has the job's name again.`);
  const own = [["columns", current.ownColumns.length], ["rows", current.ownRows.length], ["comments or pictures", current.attachments]] as const;
  const there = own.filter(([, count]) => count > 0).map(([what, count]) => `${what} (${count})`);
  if (there.length > 0) remarks.push(`Your own ${there.join(", ")} stay on the hidden earlier sheet: a new tab cannot carry them.`);
  return remarks;
}

/** Names the arrays whose records would lose their way if the array were renamed. */
export function remarksOnIds(arrays: readonly PlanRow<"arrays">[]): string[] {
  const nameless = arrays.filter(({ id }) => id === "").map(({ array }) => array);
  return nameless.map((array) => `Array ${quote(array)} has no Id: its records go by its name until Check has written one.`);
}
