import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackCooling: Rule = {
  name: "rack-cooling",
  family: "facility",
  weight: "warn",
  meaning: "What the arrays and switches in a rack draw, all of which turns to heat, can be taken away there.",
  check: (index) =>
    index.rows("racks").flatMap((rack): Remark[] => {
      const inside = [...index.rowsWith("arrays", "rack", rack.rack), ...index.rowsWith("switches", "rack", rack.rack)];
      const watts = inside.reduce((sum, row) => sum + (row.watts ?? 0), 0);
      if (rack.coolingW === null || watts <= rack.coolingW) return [];
      return [remarkAt(index, "racks", rack, "coolingW", `${rack.rack} holds ${Math.round(watts)} W of heat, its cooling takes ${rack.coolingW} W. Move some of it or add cooling.`)];
    }),
};
