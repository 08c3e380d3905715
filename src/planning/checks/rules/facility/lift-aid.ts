import { liftLimit, rackUnitMillimetres } from "../../../facility";
import { gather, unitFromBottom, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";

type Aid = Exclude<PlanRow<"arrays">["liftBy"], "">;

/** Who or what lifts, the weakest first. */
const aids: readonly Aid[] = ["one", "two", "lift table"];

export const liftAid: Rule = {
  name: "lift-aid",
  family: "facility",
  weight: "stop",
  meaning:
    "An array is lifted by no less than the revised NIOSH equation asks for at both ends of the lift: two people lift two thirds of their sum, " +
    "and nothing goes above the height for a lift table by hand (settings Lift ..., Two person share).",
  mends: "Writes who or what has to lift it.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const needed = aidNeeded(model, row);
      if (needed === null || (row.liftBy !== "" && aids.indexOf(row.liftBy) >= aids.indexOf(needed))) return [];
      const planned = row.liftBy === "" ? "nobody is planned" : `it is planned by ${row.liftBy}`;
      const kg = model.places.liftedKg(row);
      const sentence = `${row.array} is lifted with ${kg} kg to its place, which asks for ${spoken[needed]}; ${planned}. Write ${needed}.`;
      return [remarkAt(model, "arrays", row, "liftBy", sentence, mendAt(model, "arrays", row, "liftBy", needed))];
    }),
};

const spoken: Readonly<Record<Aid, string>> = { one: "one person", two: "two people", "lift table": "a lift table" };

/** Works out what a lift asks for: limits for one person, a fair grip and a lift now and then; null where the plan does not say enough. */
function aidNeeded(model: PlanModel, row: PlanRow<"arrays">): Aid | null {
  const kg = model.places.liftedKg(row);
  const rack = model.find("racks", row.rack);
  if (kg === null || rack === null || row.bottomUnit === null) return null;
  const unit = unitFromBottom(row.bottomUnit, rack);
  if (unit === null) return null;
  const { liftReachCm, liftFromCm, rackFootCm, twoPersonShare, liftTableAboveCm } = model.settings;
  const to = rackFootCm + ((unit - 1) * rackUnitMillimetres) / 10;
  if (to > liftTableAboveCm || liftFromCm > liftTableAboveCm) return "lift table";
  const { limit } = liftLimit({ horizontal: liftReachCm, from: liftFromCm, to, angle: 0, liftsPerMinute: 0.2, hours: 1, grip: "fair" });
  if (kg <= limit) return "one";
  return kg <= 2 * limit * twoPersonShare ? "two" : "lift table";
}
