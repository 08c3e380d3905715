import { gather } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const linkEnds: Rule = {
  name: "link-ends",
  family: "references",
  weight: "warn",
  meaning: "A link joins two switches, or a switch and a host: over one from a switch to itself, or between two hosts, no path leads.",
  check: (model) =>
    gather(model.rows("links"), (row): Remark[] => {
      const isToItself = row.from !== "" && foldName(row.from) === foldName(row.to);
      if (!isToItself && (model.find("hosts", row.from) === null || model.find("hosts", row.to) === null)) return [];
      const said = isToItself ? `This link runs from ${row.from} to itself` : `${row.from} and ${row.to} are both hosts`;
      return [remarkAt(model, "links", row, "to", cutSentence(`${said}, so no path leads over it. Write the switch at its other end.`))];
    }),
};
