import { gather } from "../../../plan/model";
import type { Kilograms } from "../../../quantity";
import { formatKilograms } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const heavierAbove: Rule = {
  name: "heavier-above",
  family: "facility",
  weight: "warn",
  meaning: "In the upper half of a rack nothing stands above something much lighter (setting Heavier above kg): racks tip over forwards.",
  check: (model) =>
    gather(model.racks.all(), ({ rack, devices }): Remark[] => {
      const half = (rack.units ?? Infinity) / 2;
      let lightest: { readonly name: string; readonly kg: Kilograms } | null = null;
      const remarks: Remark[] = [];
      for (const { table, row, name, lowest, kg } of devices) {
        if (kg === null) continue;
        if (lightest !== null && lowest > half && kg - lightest.kg >= model.settings.heavierAboveKg) {
          const [above, below] = [`${name} (${formatKilograms(kg)})`, `${lightest.name} (${formatKilograms(lightest.kg)})`];
          remarks.push(remarkAt(model, table, row, "bottomUnit", `${above} stands high in ${rack.rack} above ${below}. Put the heavier one lower.`));
        }
        if (lightest === null || kg < lightest.kg) lightest = { name, kg };
      }
      return remarks;
    }),
};
