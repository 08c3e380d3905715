import { gridFaults } from "../../../commissioning/procedure";
import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Rule } from "../../finding";

export const impossibleGrid: Rule = {
  name: "impossible-grid",
  family: "procedure",
  weight: "stop",
  meaning: "A section that is shown as a grid has at most four steps, none of them a hold point, with a caution, with a text that differs by subject, or with a size to record.",
  check: (model) => {
    const sections = new Map<PlanRow<"procedures">, PlanRow<"steps">[]>();
    for (const { row, section } of model.reach.steps()) if (section.shownAs === "grid") sections.set(section, [...(sections.get(section) ?? []), row]);
    return [...sections.values()].flatMap((steps) => gridFaults(steps).map(({ step, column, sentence }) => remarkAt(model, "steps", step, column, sentence)));
  },
};
