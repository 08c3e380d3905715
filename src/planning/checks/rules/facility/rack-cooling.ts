import { gather } from "../../../plan/model";
import { formatWatts } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackCooling: Rule = {
  name: "rack-cooling",
  family: "facility",
  weight: "warn",
  meaning: "What the arrays, shelves and switches in a rack draw, all of which turns to heat, can be taken away there.",
  check: (model) =>
    gather(model.rows("racks"), (rack): Remark[] => {
      const { heat } = model.racks.of(rack);
      if (rack.coolingW === null || heat <= rack.coolingW) return [];
      const cooling = formatWatts(rack.coolingW);
      const sentence = `${rack.rack} holds ${formatWatts(heat)} of heat, its cooling takes ${cooling}. Move some of it or add cooling.`;
      return [remarkAt(model, "racks", rack, "coolingW", sentence)];
    }),
};
