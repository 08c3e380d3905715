import { remarkAt, type Remark, type Rule } from "../../finding";
import { rackContents, type RackItem } from "../../../plan/model";

export const heavierAbove: Rule = {
  name: "heavier-above",
  family: "facility",
  weight: "warn",
  meaning: "In the upper half of a rack nothing stands above something much lighter (setting Heavier above kg): racks tip over forwards.",
  check: (index) =>
    rackContents(index).flatMap(({ rack, items }): Remark[] => {
      const half = (rack.units ?? Infinity) / 2;
      let lightest: RackItem | null = null;
      const remarks: Remark[] = [];
      for (const item of items) {
        if (item.kg === null) continue;
        if (lightest !== null && item.lowest > half && item.kg - lightest.kg! >= index.settings.heavierAboveKg) {
          remarks.push(remarkAt(index, item.table, item.row, "bottomUnit", `${item.name} (${item.kg} kg) stands high in ${rack.rack} above ${lightest.name} (${lightest.kg} kg). Put the heavier one lower.`));
        }
        if (lightest === null || item.kg < lightest.kg!) lightest = item;
      }
      return remarks;
    }),
};
