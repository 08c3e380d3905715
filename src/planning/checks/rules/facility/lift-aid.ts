import { liftLimit, rackUnitMillimetres } from "../../../facility";
import type { PlanRow } from "../../../plan/read";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";
import type { PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";
import { unitFromBottom } from "../../../plan/model";

const aids = ["one", "two", "lift table"] as const;
type Aid = (typeof aids)[number];

export const liftAid: Rule = {
  name: "lift-aid",
  family: "facility",
  weight: "stop",
  meaning:
    "An array is lifted by no less than the revised NIOSH equation asks for at both ends of the lift: two people lift two thirds of their sum, " +
    "and nothing goes above the height for a lift table by hand (settings Lift ..., Two person share).",
  mends: "Writes who or what has to lift it.",
  check: (index) =>
    index.rows("arrays").flatMap((row): Remark[] => {
      const needed = aidNeeded(index, row);
      if (needed === null || strength(row.liftBy) >= aids.indexOf(needed)) return [];
      const planned = row.liftBy === "" ? "nobody is planned" : `it is planned by ${row.liftBy}`;
      const sentence = `${row.array} is lifted with ${row.liftKg ?? row.weightKg} kg to its place, which asks for ${spoken[needed]}; ${planned}. Write ${needed}.`;
      return [remarkAt(index, "arrays", row, "liftBy", sentence, mendAt(index, "arrays", row, "liftBy", needed))];
    }),
};

const spoken: Readonly<Record<Aid, string>> = { one: "one person", two: "two people", "lift table": "a lift table" };

function strength(liftBy: string): number {
  return aids.findIndex((aid) => aid === foldName(liftBy));
}

/** Works out what a lift asks for: limits for one person, a fair grip and a lift now and then; null where the plan does not say enough. */
function aidNeeded(index: PlanIndex, row: PlanRow<"arrays">): Aid | null {
  const kg = row.liftKg ?? row.weightKg;
  const rack = row.rack === "" ? null : index.find("racks", row.rack);
  if (kg === null || rack === null || row.bottomUnit === null) return null;
  const unit = unitFromBottom(row.bottomUnit, rack);
  if (unit === null) return null;
  const { liftReachCm, liftFromCm, rackFootCm, twoPersonShare, liftTableAboveCm } = index.settings;
  const to = rackFootCm + ((unit - 1) * rackUnitMillimetres) / 10;
  if (to > liftTableAboveCm || liftFromCm > liftTableAboveCm) return "lift table";
  const { limit } = liftLimit({ horizontal: liftReachCm, from: liftFromCm, to, angle: 0, liftsPerMinute: 0.2, hours: 1, grip: "fair" });
  if (kg <= limit) return "one";
  return kg <= 2 * limit * twoPersonShare ? "two" : "lift table";
}
