import type { Device, PlanModel } from "../../../plan/model";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const suppliesOnOneSource: Rule = {
  name: "supplies-on-one-source",
  family: "resilience",
  weight: "warn",
  meaning: "The feeds of a device hang on different sources: boards, UPSs or utilities.",
  check: (model) => model.power.devices().flatMap((device) => sameSource(model, device)),
};

function sameSource(model: PlanModel, { table, row, name }: Device): Remark[] {
  const [a, b] = model.power.feedsOf(row);
  if (a === undefined || b === undefined || a === b || a.source === "" || foldName(a.source) !== foldName(b.source)) return [];
  const sentence = `${a.feed} and ${b.feed}, which ${name} hangs on, are both on ${a.source}: one failure there takes both. Use another source.`;
  return [remarkAt(model, table, row, "feedB", sentence)];
}
