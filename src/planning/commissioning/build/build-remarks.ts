import { sameSheetName } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import type { ForEach } from "../../plan/schema";
import { quote } from "../../text";
import type { ExpandedJob } from "../job";
import { lacksLimit } from "../procedure";
import type { TabFamily } from "../tab";

/** Says what a build does about the tabs that are there: a renamed one gets its name back, what is not ours stays. */
export function remarksOnTabs({ current, others }: TabFamily, name: string): string[] {
  if (current === null) return [];
  const remarks: string[] = [];
  if (!sameSheetName(current.sheet, name)) remarks.push(`The tab was called ${quote(current.sheet)}. It has the job's name again.`);
  const texts = current.elsewhere.filter(({ carried }) => carried === "").length;
  if (texts > 0) remarks.push(`${texts} ${texts === 1 ? "text stands" : "texts stand"} under Found elsewhere, with the place: typed beside, between or over our cells.`);
  if (current.attachments > 0) remarks.push(`Comments or pictures (${current.attachments}) stay on the hidden earlier sheet: a new tab cannot carry them.`);
  if (current.mayHoldNotes && others.length > 0) remarks.push("Earlier tabs of this job stay, hidden: this program does not tell whether notes are on them. Delete those that hold nothing you need.");
  for (const { sheet } of others.filter(({ faults }) => faults.length > 0)) remarks.push(`Tab ${quote(sheet)} cannot be read as it was built, so it stays. Look whether it holds anything.`);
  return remarks;
}

/** Names the arrays whose records would lose their way if the array were renamed. */
export function remarksOnIds(arrays: readonly PlanRow<"arrays">[]): string[] {
  const nameless = arrays.filter(({ id }) => id === "").map(({ array }) => array);
  return nameless.map((array) => `Array ${quote(array)} has no Id: its records go by its name until Check has written one.`);
}

/** What a site, or an array of it, cannot do without once it works: where the plan has none, its steps are missing, not unneeded. */
const neverAbsent: Partial<Record<ForEach, string>> = {
  rack: "racks", feed: "feeds", switch: "switches", network: "networks", host: "hosts", controller: "controllers", port: "ports of its arrays", prompt: "prompts of its models",
};

/** Says of what the plan has none, so that a tab without its steps is not taken for a site that needs none. */
export function remarksOnAbsent({ absent, job: { site } }: Pick<ExpandedJob, "absent" | "job">): string[] {
  const names = absent.flatMap((kind) => neverAbsent[kind] ?? []);
  return names.length === 0 ? [] : [`The plan has none of these for ${quote(site)}, so the tab has no step about them: ${names.join(", ")}. Write their rows and build again.`];
}

/** Names the steps that are to keep a limit that nobody planned: whatever is found there differs. */
export function remarksOnLimits({ sections }: Pick<ExpandedJob, "sections">): string[] {
  const ids = new Set(sections.flatMap(({ steps }) => steps.filter(({ expectation }) => lacksLimit(expectation)).map(({ stepId }) => stepId)));
  return ids.size === 0 ? [] : [`No limit is planned for ${[...ids].join(", ")}, so whatever is found there differs. Agree it, write it into the plan and build again.`];
}
