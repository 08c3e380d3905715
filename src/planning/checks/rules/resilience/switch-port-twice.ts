import type { PlanRow } from "../../../plan/read";
import { foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const switchPortTwice: Rule = {
  name: "switch-port-twice",
  family: "resilience",
  weight: "stop",
  meaning: "A port of a switch takes one cable.",
  check: (model) => {
    const seen = new Map<string, PlanRow<"ports">>();
    return model.rows("ports").flatMap((row): Remark[] => {
      if (row.switch === "" || row.switchPort === "") return [];
      const place = `${foldName(row.switch)}\n${foldName(row.switchPort)}`;
      const earlier = seen.get(place);
      if (earlier === undefined) seen.set(place, row);
      // Addresses of both families on one port share its cable.
      if (earlier === undefined || cableOf(earlier) === cableOf(row)) return [];
      return [remarkAt(model, "ports", row, "switchPort", `Port ${row.switchPort} of ${row.switch} is taken by row ${earlier.row + 1}. Choose a free one.`)];
    });
  },
};

function cableOf({ array, controller, port }: PlanRow<"ports">): string {
  return [array, controller, port].map(foldName).join("\n");
}
