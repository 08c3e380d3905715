import type { PlanRow } from "../../../plan/read";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const hostWithoutPath: Rule = {
  name: "host-without-path",
  family: "resilience",
  weight: "stop",
  meaning: "Links and cables lead from every host to every cabled array of its site.",
  check: (model) => {
    const isLinked = (row: PlanRow<"hosts">): boolean => model.paths.switchesOf(row).length > 0;
    // Where no host of a site has a link, nothing is known about any: another rule says so.
    const unlinked = model.rows("hosts").filter((row) => row.host !== "" && !isLinked(row) && model.rowsWith("hosts", "site", row.site).some(isLinked));
    const parted = model.paths.weak().filter(({ points }) => points === null);
    return [
      ...unlinked.map((row): Remark => remarkAt(model, "hosts", row, "host", `${row.host} has no link to a switch, so it reaches no array. Add its links.`)),
      ...parted.map(({ host, array }): Remark => remarkAt(model, "hosts", host, "host", `Nothing joins ${host.host} to ${array.array}, which is at the same site. Add the missing link or cable.`)),
    ];
  },
};
