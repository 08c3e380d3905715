import { type Remark, remarkOn, type Rule } from "../../finding";

export const drivesOutsideGroup: Rule = {
  name: "drives-outside-group",
  family: "capacity",
  weight: "warn",
  meaning: "Every drive that is no spare fills a group of its scheme; one outside a group stores nothing.",
  check: (model) =>
    model.capacity.sets().flatMap((set): Remark[] => {
      const layout = model.capacity.layoutOf(set);
      if (layout === null || layout.outside === 0) return [];
      const many = layout.outside === 1 ? "1 drive of" : `${layout.outside} drives of`;
      const sentence = `${many} ${set.label} would fill no group of ${layout.scheme.name} and store nothing. Change drives, spares or the group shape.`;
      return [remarkOn(model, { ...set.at, column: "drives" }, sentence)];
    }),
};
