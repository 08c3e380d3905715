import { gather } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const rackDepth: Rule = {
  name: "rack-depth",
  family: "facility",
  weight: "stop",
  meaning: "An array, with its cables and their bend radius, is no deeper than its rack.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const rack = model.find("racks", row.rack);
      const room = rack?.depthMm ?? null;
      if (rack === null || room === null || row.depthMm === null || row.depthMm <= room) return [];
      return [remarkAt(model, "arrays", row, "depthMm", `${row.array} is ${row.depthMm} mm deep, ${rack.rack} has ${room} mm. Choose a deeper rack.`)];
    }),
};
