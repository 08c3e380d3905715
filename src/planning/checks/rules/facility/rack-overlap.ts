import { gather, type RackDevice, unitsOf } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const rackOverlap: Rule = {
  name: "rack-overlap",
  family: "facility",
  weight: "stop",
  meaning: "No two arrays, shelves or switches fill the same unit of a rack.",
  check: (model) =>
    gather(model.racks.all(), ({ rack, devices }): Remark[] => {
      let below: RackDevice | null = null;
      const remarks: Remark[] = [];
      for (const device of devices) {
        if (below !== null && device.lowest <= below.highest) {
          const sentence = `${device.name} fills ${unitsOf(device, rack)} of ${rack.rack}, ${below.name} ${unitsOf(below, rack)}. Move one of them.`;
          remarks.push(remarkAt(model, device.table, device.row, "bottomUnit", sentence));
        }
        if (below === null || device.highest > below.highest) below = device;
      }
      return remarks;
    }),
};
