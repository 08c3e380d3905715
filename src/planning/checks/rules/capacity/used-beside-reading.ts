import { gather } from "../../../plan/model";
import { formatSize, terabyte } from "../../../quantity";
import { rowsOf } from "../../../plan/read";
import { cutSentence, formatTerabytes } from "../../../text";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

/** Share of what was read by which the plan has to differ from it before it is told: what arrays show is rounded. */
const toldFrom = 0.01;

export const usedBesideReading: Rule = {
  name: "used-beside-reading",
  family: "capacity",
  weight: "note",
  meaning: "Used of an array says what was read of it last, within 1%: the reading counts, and what stands beside it misleads whoever looks at the table.",
  mends: "Writes the latest reading into Used.",
  check: (model) => {
    const typed = new Map(rowsOf(model.plan, "arrays").map((row) => [row.row, row.used]));
    return gather(model.rows("arrays"), (row): Remark[] => {
      const used = typed.get(row.row) ?? null;
      if (used === null || row.used === null || Math.abs(Number(row.used - used)) <= toldFrom * Number(row.used)) return [];
      const sentence = `Used of ${row.array} is ${formatTerabytes(used)}, and ${formatTerabytes(row.used)} was read last, which counts. Write the reading.`;
      return [remarkAt(model, "arrays", row, "used", cutSentence(sentence), mendAt(model, "arrays", row, "used", formatSize(row.used, terabyte, null)))];
    });
  },
};
