import { gather } from "../../../plan/model";
import { cutSentence, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const unknownOpener: Rule = {
  name: "unknown-opener",
  family: "intent",
  weight: "stop",
  meaning: "Host or group of Access names a host of the table Hosts, or a group in its column Groups.",
  check: (model) =>
    gather(model.rows("access"), (row): Remark[] => {
      if (model.volumes.hostsOf(row.to).length > 0) return [];
      const said = row.to === "" ? `Nobody is named who opens ${row.volume}` : `${quote(row.to)} is no host and no group`;
      return [remarkAt(model, "access", row, "to", cutSentence(`${said}. Write a host of the table Hosts, or a group of its column Groups.`))];
    }),
};
