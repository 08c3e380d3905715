import { remarkAt, type Remark, type Rule } from "../../finding";
import { rackContents, unitsOf } from "../../../plan/model";

export const rackOutside: Rule = {
  name: "rack-outside",
  family: "facility",
  weight: "stop",
  meaning: "Every unit that something fills is one of its rack.",
  check: (index) =>
    rackContents(index).flatMap(({ rack, items }): Remark[] => {
      const { units } = rack;
      if (units === null) return [];
      return items
        .filter(({ lowest, highest }) => lowest < 1 || highest > units)
        .map((item) => remarkAt(index, item.table, item.row, "bottomUnit", `${item.name} would fill ${unitsOf(item, rack)} of ${rack.rack}, which has 1 to ${units}. Write another bottom unit.`));
    }),
};
