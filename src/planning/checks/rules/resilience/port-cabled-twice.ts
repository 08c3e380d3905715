import type { SwitchCable } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portCabledTwice: Rule = {
  name: "port-cabled-twice",
  family: "resilience",
  weight: "stop",
  meaning: "A port of an array or a host takes one cable: its rows, one for each of its networks, name the same port of the same switch.",
  check: (model) =>
    model.wiring.shared().flatMap((rows) => {
      const [first, ...others] = rows.filter(({ row }) => row.switch !== "" && row.switchPort !== "");
      return others.flatMap((one): Remark[] => {
        const { table, row, label } = one;
        if (first === undefined || endOf(first) === endOf(one)) return [];
        const sentence = `${label} goes to ${row.switch} port ${row.switchPort} here, and to ${first.row.switch} port ${first.row.switchPort} by row ${first.row.row + 1}. Write one end.`;
        return [remarkAt(model, table, row, "switchPort", cutSentence(sentence))];
      });
    }),
};

function endOf({ row }: SwitchCable): string {
  return `${foldName(row.switch)}\n${foldName(row.switchPort)}`;
}
