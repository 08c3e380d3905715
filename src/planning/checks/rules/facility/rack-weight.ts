import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackWeight: Rule = {
  name: "rack-weight",
  family: "facility",
  weight: "stop",
  meaning: "The arrays in a rack weigh no more than the rack and the floor carry; what else stands in it comes on top.",
  check: (index) =>
    index.rows("racks").flatMap((rack): Remark[] => {
      const kg = index.rowsWith("arrays", "rack", rack.rack).reduce((sum, { weightKg }) => sum + (weightKg ?? 0), 0);
      if (rack.limitKg === null || kg <= rack.limitKg) return [];
      return [remarkAt(index, "racks", rack, "limitKg", `The arrays in ${rack.rack} weigh ${round(kg)} kg, over its limit of ${rack.limitKg} kg. Move some to another rack.`)];
    }),
};

function round(kg: number): number {
  return Math.round(kg * 10) / 10;
}
