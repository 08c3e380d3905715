import { remarkAt, type Remark, type Rule } from "../../finding";
import { rackContents, unitsOf, type RackItem } from "../../../plan/model";

export const rackOverlap: Rule = {
  name: "rack-overlap",
  family: "facility",
  weight: "stop",
  meaning: "No two arrays or switches fill the same unit of a rack.",
  check: (index) =>
    rackContents(index).flatMap(({ rack, items }): Remark[] => {
      let below: RackItem | null = null;
      const remarks: Remark[] = [];
      for (const item of items) {
        if (below !== null && item.lowest <= below.highest) {
          remarks.push(remarkAt(index, item.table, item.row, "bottomUnit", `${item.name} fills ${unitsOf(item, rack)} of ${rack.rack}, ${below.name} ${unitsOf(below, rack)}. Move one of them.`));
        }
        if (below === null || item.highest > below.highest) below = item;
      }
      return remarks;
    }),
};
