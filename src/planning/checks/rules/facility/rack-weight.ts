import { gather } from "../../../plan/model";
import { formatKilograms } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackWeight: Rule = {
  name: "rack-weight",
  family: "facility",
  weight: "stop",
  meaning: "The arrays and shelves in a rack weigh no more than the rack and the floor carry; what else stands in it comes on top.",
  check: (model) =>
    gather(model.rows("racks"), (rack): Remark[] => {
      const { kg } = model.racks.of(rack);
      if (rack.limitKg === null || kg <= rack.limitKg) return [];
      const limit = formatKilograms(rack.limitKg);
      const sentence = `Arrays and shelves in ${rack.rack} weigh ${formatKilograms(kg)}, over its limit of ${limit}. Move some to another rack.`;
      return [remarkAt(model, "racks", rack, "limitKg", sentence)];
    }),
};
