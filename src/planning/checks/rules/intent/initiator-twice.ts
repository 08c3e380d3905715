import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const initiatorTwice: Rule = {
  name: "initiator-twice",
  family: "intent",
  weight: "stop",
  meaning: "Every host has an initiator name of its own: two hosts of one name open the same volumes and destroy what is on them.",
  check: (model) =>
    [...model.groupBy("hosts", "initiatorName").values()].flatMap(([first, ...others]) =>
      others.flatMap((row): Remark[] =>
        first === undefined || foldName(first.host) === foldName(row.host)
          ? []
          : [remarkAt(model, "hosts", row, "initiatorName", `${row.host} has the initiator name of ${first.host} in row ${first.row + 1}: both would open the same volumes. Write its own.`)],
      ),
    ),
};
