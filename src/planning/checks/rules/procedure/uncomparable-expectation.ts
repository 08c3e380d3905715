import { parseExpectation } from "../../../commissioning/procedure";
import { orNull, refusalOf } from "../../../plan/model";
import { parseTemplate } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const uncomparableExpectation: Rule = {
  name: "uncomparable-expectation",
  family: "procedure",
  weight: "stop",
  meaning: "What a step expects can be compared with what it records: a number with a number, an address with an address, one of its choices.",
  check: (model) =>
    model.reach.steps().flatMap(({ row }): Remark[] => {
      const unrecorded = refusalOf(() => parseExpectation(row, "", "This step"));
      if (unrecorded !== null) return [remarkAt(model, "steps", row, "record", unrecorded)];
      const template = orNull(() => parseTemplate(row.expect, "Expect"));
      // A single field is compared once it is filled; a text around fields is tried with a 1 in their place.
      if (template === null || (template.length === 1 && "name" in template[0]!)) return [];
      const tried = template.map((piece) => ("text" in piece ? piece.text : "1")).join("");
      const hasFields = template.some((piece) => "name" in piece);
      const refusal = refusalOf(() => parseExpectation(row, tried.trim(), "This step"));
      if (refusal === null) return [];
      if (!hasFields) return [remarkAt(model, "steps", row, "expect", refusal)];
      const [kind = ""] = row.record.split(":");
      return [remarkAt(model, "steps", row, "expect", `However it is filled, this is no ${kind.trim()} to compare with. Write the field alone, or record text.`)];
    }),
};
