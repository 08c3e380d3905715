import { gather, driveLabel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const driveDates: Rule = {
  name: "drive-dates",
  family: "intent",
  weight: "warn",
  meaning: "A drive was taken out no earlier than it was fitted, and not on a day to come: one with a day under Taken out is no longer expected in its bay.",
  check: (model, today) =>
    gather(model.rows("drives"), (row): Remark[] => {
      const { fitted, takenOut } = row;
      if (takenOut === null) return [];
      const wrong = fitted !== null && takenOut < fitted ? `before it was fitted on ${fitted}` : takenOut > today ? "a day to come, yet it counts as gone" : null;
      if (wrong === null) return [];
      return [remarkAt(model, "drives", row, "takenOut", cutSentence(`The drive of ${driveLabel(row)} was taken out on ${takenOut}, ${wrong}. Mend the day.`))];
    }),
};
