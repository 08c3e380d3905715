import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const sideNotSaid: Rule = {
  name: "side-not-said",
  family: "intent",
  weight: "note",
  meaning: "Where data networks of a site name sides, all of them do: nobody looks whether one without shares its switches with another.",
  check: (model) => {
    const data = model.networks.all().filter(({ row, roles }) => roles.has("data") && row.site !== "");
    const sided = new Map(data.flatMap(({ row }) => (row.side === "" ? [] : [[foldName(row.site), row] as const])));
    return data.flatMap(({ row }) => {
      const other = row.side === "" ? sided.get(foldName(row.site)) : undefined;
      if (other === undefined) return [];
      const sentence = `${row.network} says no side, while ${other.network} is of side ${other.side}: its switches are held against nothing. Write A or B.`;
      return [remarkAt(model, "networks", row, "side", cutSentence(sentence))];
    });
  },
};
