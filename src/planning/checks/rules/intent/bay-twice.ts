import { gather, driveLabel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const bayTwice: Rule = {
  name: "bay-twice",
  family: "intent",
  weight: "stop",
  meaning: "In one bay sits one drive: where another was put in, the row of the first says when it was taken out.",
  check: (model) =>
    gather(model.rows("arrays"), (array): Remark[] =>
      [...model.drives.byBay(array).values()].flatMap(([first, ...others]) =>
        others.map((row) => {
          const sentence = `In ${driveLabel(row)} sits the drive of row ${first!.row + 1} already. Write under Taken out when that one left, or another bay.`;
          return remarkAt(model, "drives", row, "bay", cutSentence(sentence));
        }),
      ),
    ),
};
