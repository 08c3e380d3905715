import { remarkAt, type Remark, type Rule } from "../../finding";
import { hostPaths, switchesOfHost } from "../../../plan/model";

export const hostWithoutPath: Rule = {
  name: "host-without-path",
  family: "resilience",
  weight: "stop",
  meaning: "Links and cables lead from every host to every cabled array of its site.",
  check: (index) => {
    const unlinked = index.rows("links").length === 0 ? [] : index.rows("hosts").filter((row) => row.host !== "" && switchesOfHost(index, row).length === 0);
    const parted = hostPaths(index).filter(({ points }) => points === null);
    return [
      ...unlinked.map((row): Remark => remarkAt(index, "hosts", row, "host", `${row.host} has no link to a switch, so it reaches no array. Add its links.`)),
      ...parted.map(({ host, array }): Remark => remarkAt(index, "hosts", host, "host", `Nothing joins ${host.host} to ${array.array}, which is at the same site. Add the missing link or cable.`)),
    ];
  },
};
