import type { SwitchCable } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portRowTwice: Rule = {
  name: "port-row-twice",
  family: "addresses",
  weight: "warn",
  meaning: "A port of an array or a host has one row for each network that it is in: with two, only the first is on tabs and in plans of cabling.",
  check: (model) => {
    const seen = new Map<string, SwitchCable>();
    return model.wiring.all().flatMap((one): Remark[] => {
      const { table, row, network, cable, label, port } = one;
      if (network === null || port === "") return [];
      const place = `${network.row.row}\n${cable}`;
      const earlier = seen.get(place);
      if (earlier === undefined) seen.set(place, one);
      if (earlier === undefined) return [];
      const sentence = `${label} is in ${network.row.network} by row ${earlier.row.row + 1} already. Keep one of the two rows, or write the other port or network.`;
      return [remarkAt(model, table, row, "network", cutSentence(sentence))];
    });
  },
};
