import type { SwitchCable } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portCabledTwice: Rule = {
  name: "port-cabled-twice",
  family: "resilience",
  weight: "stop",
  meaning: "A port of an array or a host takes one cable: its rows, one for each of its networks, name the same port of the same switch.",
  check: (model) => {
    const seen = new Map<string, SwitchCable>();
    return model.wiring.all().flatMap((one): Remark[] => {
      const { table, row, cable, label } = one;
      if (row.switch === "" || row.switchPort === "") return [];
      const earlier = seen.get(cable);
      if (earlier === undefined) seen.set(cable, one);
      if (earlier === undefined || endOf(earlier) === endOf(one)) return [];
      const sentence = `${label} goes to ${row.switch} port ${row.switchPort} here, and to ${earlier.row.switch} port ${earlier.row.switchPort} by row ${earlier.row.row + 1}. Write one end.`;
      return [remarkAt(model, table, row, "switchPort", cutSentence(sentence))];
    });
  },
};

function endOf({ row }: SwitchCable): string {
  return `${foldName(row.switch)}\n${foldName(row.switchPort)}`;
}
