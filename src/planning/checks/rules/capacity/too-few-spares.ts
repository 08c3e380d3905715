import { gather } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const tooFewSpares: Rule = {
  name: "too-few-spares",
  family: "capacity",
  weight: "warn",
  meaning: "An array with redundancy has a hot spare (setting Spares an array), so that a rebuild starts at once.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const layouts = model.capacity.setsOf(row).map((set) => model.capacity.layoutOf(set));
      const least = model.settings.sparesPerArray;
      const spares = layouts.reduce((sum, layout) => sum + (layout?.spares ?? 0), 0);
      if (layouts.includes(null) || layouts.every((layout) => layout?.redundancy === 0) || spares >= least) return [];
      const has = spares === 0 ? "no hot spare" : `${spares} of the ${least} hot spares asked for`;
      return [remarkAt(model, "arrays", row, "spares", `${row.array} has ${has}, so a rebuild waits for somebody to bring a drive. Plan more spares.`)];
    }),
};
