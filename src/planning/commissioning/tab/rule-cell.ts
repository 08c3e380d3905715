import { recordKinds, signs } from "../../plan/schema";
import type { StepRecord } from "../record";

/** What the hidden cell Rule says of a step, as words with a space between. */
type StepRule = Pick<StepRecord, "required" | "sign" | "kind">;

/** First word of the rule of a step without which the job cannot be closed; formulas look for it. */
export const requiredWord = "required";

/** Writes the rule of a step. */
export function ruleText({ required, sign, kind }: StepRule): string {
  return `${required ? requiredWord : "optional"} ${sign} ${kind}`;
}

/** Reads the rule of a step; a cell that people emptied asks for nothing. */
export function readRule(text: string): StepRule {
  const [need, sign = "none", kind] = text.split(" ");
  return {
    required: need === requiredWord,
    sign: signs.find((one) => one === sign) ?? "one",
    kind: recordKinds.find((one) => one === kind) ?? "text",
  };
}
