import { gather, type Device, type PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import { quote } from "../../../text";
import { mendAt, type Remark, remarkAt, type Rule } from "../../finding";

export const feedPhase: Rule = {
  name: "feed-phase",
  family: "facility",
  weight: "warn",
  meaning: "A feed has one phase or three, and only one of three has a phase to hang on.",
  mends: "Writes the feed without the phase.",
  check: (model) => [
    ...model.power.devices().flatMap((device) => remarksOf(model, device)),
    ...gather(model.rows("feeds"), (row): Remark[] => {
      if (row.phases === null || row.phases === 1 || row.phases === 3) return [];
      return [remarkAt(model, "feeds", row, "phases", `${row.feed} has ${row.phases} phases, and is counted with one. Write 1, or 3.`)];
    }),
  ],
};

function remarksOf(model: PlanModel, { table, row }: Device): Remark[] {
  return (["feedA", "feedB"] as const).flatMap((column): Remark[] => {
    const found = splitFeedPhase(row[column]).phase === null ? null : model.power.feedNamed(row[column]);
    if (found === null || found.phases === 3) return [];
    const sentence = `${quote(row[column])} names a phase, but ${found.feed} has one only. Write ${found.feed}.`;
    return [remarkAt(model, table, row, column, sentence, mendAt(model, table, row, column, found.feed))];
  });
}
