import { longestSheetName, sheetNameFault } from "../../../../sheet";
import { gather } from "../../../plan/model";
import { tableKeys } from "../../../plan/schema";
import { foldName, quote } from "../../../text";
import { mendAt, type Remark, remarkAt, type Rule } from "../../finding";

export const tabName: Rule = {
  name: "tab-name",
  family: "references",
  weight: "stop",
  meaning: "The name of a job can be the name of its tab: 1 to 31 characters, none of \\ / ? * [ ] :, and no planning sheet's name.",
  mends: "Writes the name without the characters that cannot stand in it, cut to 31.",
  check: (model) => {
    const planning = new Set(tableKeys.flatMap((key) => foldName(model.table(key)?.sheet ?? "")));
    const jobs = new Set(model.rows("jobs").map(({ job }) => foldName(job)));
    return gather(model.rows("jobs"), (row): Remark[] => {
      if (row.job === "") return [];
      const fault = planning.has(foldName(row.job)) ? "is the name of a planning sheet" : sheetNameFault(row.job);
      if (fault === null) return [];
      const better = withinRules(row.job);
      const isFree = better !== "" && sheetNameFault(better) === null && !planning.has(foldName(better)) && !jobs.has(foldName(better));
      const sentence = `Job ${quote(row.job)} ${fault}, so no tab can have it. Write another${isFree ? `, such as ${better}` : ""}.`;
      return [remarkAt(model, "jobs", row, "job", sentence, isFree ? mendAt(model, "jobs", row, "job", better) : null)];
    });
  },
};

function withinRules(name: string): string {
  const clean = name.replace(/[\\/?*[\]:\p{Cc}\p{Cs}]+/gu, "-").replace(/^'+|'+$/g, "").trim();
  return clean.slice(0, longestSheetName).trim();
}
