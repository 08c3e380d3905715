import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeWithoutHost: Rule = {
  name: "volume-without-host",
  family: "intent",
  weight: "warn",
  meaning: "Every volume is opened by a host or a group of hosts.",
  check: (model) =>
    gather(model.rows("volumes"), (row): Remark[] =>
      row.volume === "" || model.rowsWith("access", "volume", row.volume).length > 0
        ? []
        : [remarkAt(model, "volumes", row, "volume", cutSentence(`No host may open ${row.volume}. Write a row in Access, or take the volume out.`))],
    ),
};
