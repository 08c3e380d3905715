import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { foldName } from "../../../text";

export const switchPortTwice: Rule = {
  name: "switch-port-twice",
  family: "resilience",
  weight: "stop",
  meaning: "A port of a switch takes one cable.",
  check: (index) => {
    const seen = new Map<string, PlanRow<"ports">>();
    return index.rows("ports").flatMap((row): Remark[] => {
      if (row.switch === "" || row.switchPort === "") return [];
      const place = `${foldName(row.switch)}\n${foldName(row.switchPort)}`;
      const earlier = seen.get(place);
      if (earlier === undefined) seen.set(place, row);
      // Addresses of both families on one port share its cable.
      if (earlier === undefined || cableOf(earlier) === cableOf(row)) return [];
      return [remarkAt(index, "ports", row, "switchPort", `Port ${row.switchPort} of ${row.switch} is taken by row ${earlier.row + 1}. Choose a free one.`)];
    });
  },
};

function cableOf({ array, controller, port }: PlanRow<"ports">): string {
  return [array, controller, port].map(foldName).join("\n");
}
