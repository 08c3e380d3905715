import { bitsIn, readFault } from "../../../durability";
import { bytes } from "../../../quantity";
import { formatPercent } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const rebuildReadFault: Rule = {
  name: "rebuild-read-fault",
  family: "capacity",
  weight: "warn",
  meaning:
    "Where an array survives one failure only, the rebuild after it, which reads the data of all its group, is unlikely to meet an unreadable bit " +
    "(settings Read error rate, Read fault share). With more redundancy such a bit is corrected.",
  check: (model) =>
    model.capacity.sets().flatMap((set): Remark[] => {
      const layout = model.capacity.layoutOf(set);
      if (layout?.redundancy !== 1 || set.driveSize === null) return [];
      const { readErrorRate, readFaultShare } = model.settings;
      const { happens } = readFault(bitsIn(bytes(BigInt(layout.data) * set.driveSize)), readErrorRate);
      if (happens <= readFaultShare) return [];
      const chance = `${formatPercent(happens)}, over ${formatPercent(readFaultShare)}`;
      const sentence = `A rebuild of ${set.label} meets a read fault with a chance of ${chance}. Choose a scheme that survives two failures.`;
      return [remarkOn(model, { ...set.at, column: "scheme" }, sentence)];
    }),
};
