import { gather, type RackContents } from "../../../plan/model";
import { andMore, cutSentence, formatKilograms } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rackNotKnown: Rule = {
  name: "rack-not-known",
  family: "facility",
  weight: "note",
  meaning: "What is planned into a rack says how many units it fills, and arrays and shelves what they weigh: else one unit and no weight is counted.",
  check: (model) =>
    gather(model.racks.all(), (contents): Remark[] => {
      const said = [...unitsNotKnown(contents), ...weightNotKnown(contents)].join(" ");
      return said === "" ? [] : [remarkAt(model, "racks", contents.rack, "rack", cutSentence(`${contents.rack.rack}: ${said}`))];
    }),
};

function unitsNotKnown({ unmeasured }: RackContents): string[] {
  const [first, ...others] = unmeasured;
  return first === undefined ? [] : [`${andMore(first, others.length)} counted as one unit, Units is blank.`];
}

function weightNotKnown({ unweighed, kg }: RackContents): string[] {
  const [first, ...others] = unweighed;
  return first === undefined ? [] : [`It carries ${formatKilograms(kg)} without ${andMore(first, others.length)}, whose weight is blank.`];
}
