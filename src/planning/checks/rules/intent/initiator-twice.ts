import { groupBy } from "../../../plan/model";
import { tables } from "../../../plan/schema";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const initiatorTwice: Rule = {
  name: "initiator-twice",
  family: "intent",
  weight: "stop",
  meaning: "Every host has initiator names of its own: two hosts of one name open the same volumes and destroy what is on them.",
  check: (model) =>
    [...groupBy(model.hostPorts.initiators(), ({ row }) => foldName(row.initiatorName)).values()].flatMap(([first, ...others]) =>
      others.flatMap(({ table, row }): Remark[] => {
        if (first === undefined || foldName(first.row.host) === foldName(row.host)) return [];
        const where = `row ${first.row.row + 1}${first.table === table ? "" : ` of ${tables[first.table].name}`}`;
        const sentence = `${row.host} has the initiator name of ${first.row.host} in ${where}: both would open the same volumes. Write its own.`;
        return [remarkAt(model, table, row, "initiatorName", cutSentence(sentence))];
      }),
    ),
};
