import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portRowTwice: Rule = {
  name: "port-row-twice",
  family: "addresses",
  weight: "warn",
  meaning: "A port of an array or a host has one row for each network that it is in: with two, only the first is on tabs and in plans of cabling.",
  check: (model) =>
    model.wiring.shared().flatMap((rows) =>
      rows.flatMap(({ table, row, network, label, port }): Remark[] => {
        const first = network === null || port === "" ? undefined : rows.find((one) => one.network === network);
        if (first === undefined || first.row === row) return [];
        const sentence = `${label} is in ${row.network} by row ${first.row.row + 1} already. Keep one of the two rows, or write the other port or network.`;
        return [remarkAt(model, table, row, "network", cutSentence(sentence))];
      }),
    ),
};
