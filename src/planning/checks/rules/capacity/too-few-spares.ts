import { type Remark, remarkAt, type Rule } from "../../finding";

export const tooFewSpares: Rule = {
  name: "too-few-spares",
  family: "capacity",
  weight: "warn",
  meaning: "An array with redundancy has a hot spare (setting Spares an array), so that a rebuild starts at once.",
  check: (model) =>
    model.rows("arrays").flatMap((row): Remark[] => {
      const layout = model.capacity.layoutOf(row);
      const least = model.settings.sparesPerArray;
      if (layout === null || layout.redundancy === 0 || layout.spares >= least) return [];
      const has = layout.spares === 0 ? "no hot spare" : `${layout.spares} of the ${least} hot spares asked for`;
      return [remarkAt(model, "arrays", row, "spares", `${row.array} has ${has}, so a rebuild waits for somebody to bring a drive. Plan more spares.`)];
    }),
};
