import { gather, oncePer, type SwitchCable } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const switchPortTwice: Rule = {
  name: "switch-port-twice",
  family: "resilience",
  weight: "stop",
  meaning: "A port of a switch takes one cable, of an array or of a host.",
  check: (model) => {
    const takenOf = oncePer<string, Map<string, SwitchCable>>(() => new Map());
    return gather(model.wiring.all(), (one): Remark[] => {
      const { table, row, cable } = one;
      if (row.switch === "" || row.switchPort === "") return [];
      const [taken, port] = [takenOf(foldName(row.switch)), foldName(row.switchPort)];
      const earlier = taken.get(port);
      if (earlier === undefined) taken.set(port, one);
      // Addresses of both families on one port share its cable.
      if (earlier === undefined || earlier.cable === cable) return [];
      return [remarkAt(model, table, row, "switchPort", cutSentence(`Port ${row.switchPort} of ${row.switch} is taken by ${earlier.label}, in row ${earlier.row.row + 1}. Choose a free one.`))];
    });
  },
};
