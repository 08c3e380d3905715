import { gather, unitsOf } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const rackOutside: Rule = {
  name: "rack-outside",
  family: "facility",
  weight: "stop",
  meaning: "Every unit that something fills is one of its rack.",
  check: (model) =>
    gather(model.racks.all(), ({ rack, devices }): Remark[] => {
      const { units } = rack;
      if (units === null) return [];
      return devices
        .filter(({ lowest, highest }) => lowest < 1 || highest > units)
        .map((device) => {
          const sentence = `${device.name} would fill ${unitsOf(device, rack)} of ${rack.rack}, which has 1 to ${units}. Write another bottom unit.`;
          return remarkAt(model, device.table, device.row, "bottomUnit", sentence);
        });
    }),
};
