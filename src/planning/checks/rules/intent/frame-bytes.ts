import { gather, frameFor } from "../../../plan/model";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

export const frameBytes: Rule = {
  name: "frame-bytes",
  family: "intent",
  weight: "stop",
  meaning: "A switch forwards frames of the MTU of every network it carries and 22 bytes around it (header, tag, check sequence), where it says how large.",
  mends: "Writes the frame bytes that its networks need.",
  check: (model) =>
    gather(model.rows("switches"), (row): Remark[] => {
      const networks = model.networks.carriedOn(row).filter(({ isIp }) => isIp);
      const widest = networks.reduce<(typeof networks)[number] | null>((most, one) => (most === null || one.mtu > most.mtu ? one : most), null);
      if (row.frameBytes === null || widest === null || row.frameBytes >= frameFor(widest.mtu)) return [];
      const needed = frameFor(widest.mtu);
      const sentence = `${row.switch} forwards frames of ${row.frameBytes} bytes; ${widest.row.network} (MTU ${widest.mtu}) needs ${needed}. Set it there and write it, or lower the MTU.`;
      return [remarkAt(model, "switches", row, "frameBytes", sentence, mendAt(model, "switches", row, "frameBytes", needed))];
    }),
};
