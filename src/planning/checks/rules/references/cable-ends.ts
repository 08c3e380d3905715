import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const cableEnds: Rule = {
  name: "cable-ends",
  family: "references",
  weight: "warn",
  meaning: "The ends of a row of Cables are those of a cable that Ports, Host ports, Links or a feed ask for: its label says where to plug it in.",
  mends: "Writes the ends that the plan has today.",
  check: (model) => [
    ...model.cables.moved().map(({ row, cable }): Remark => {
      const writes = (["from", "to"] as const).flatMap((column) => model.write({ table: "cables", row: row.row, column }, cable[column]) ?? []);
      const sentence = cutSentence(`${row.id || "This cable"} runs from ${cable.from} to ${cable.to} by the plan. Write those ends, and label it anew.`);
      return remarkAt(model, "cables", row, "from", sentence, { description: `Write ${cable.from} and ${cable.to} as its ends.`, writes });
    }),
    ...model.cables.lost().map((row) => {
      const ends = `from ${row.from || "a blank end"} to ${row.to || "a blank end"}`;
      return remarkAt(model, "cables", row, "from", cutSentence(`No other cable of the plan runs ${ends}. Mend its ends, or empty both once it is taken out.`));
    }),
  ],
};
