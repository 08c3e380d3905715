import type { RackContents } from "../../../plan/model";
import { cutSentence, formatKilograms } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackNotKnown: Rule = {
  name: "rack-not-known",
  family: "facility",
  weight: "note",
  meaning: "What is planned into a rack says how many units it fills, and arrays and shelves what they weigh: else one unit and no weight is counted.",
  check: (model) =>
    model.racks.all().flatMap((contents): Remark[] => {
      const said = [...unitsNotKnown(contents), ...weightNotKnown(contents)].join(" ");
      return said === "" ? [] : [remarkAt(model, "racks", contents.rack, "rack", cutSentence(`${contents.rack.rack}: ${said}`))];
    }),
};

function unitsNotKnown({ unmeasured }: RackContents): string[] {
  return unmeasured.length === 0 ? [] : [`${listed(unmeasured)} counted as one unit, Units is blank.`];
}

function weightNotKnown({ unweighed, kg }: RackContents): string[] {
  return unweighed.length === 0 ? [] : [`It carries ${formatKilograms(kg)} without ${listed(unweighed)}, whose weight is blank.`];
}

/** Names the first of some devices, and says how many there are besides. */
function listed([first, ...others]: readonly string[]): string {
  return `${first}${others.length === 0 ? "" : ` and ${others.length} more`}`;
}
