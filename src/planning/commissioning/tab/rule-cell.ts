import { isBlank, showCell, type CellValue } from "../../../sheet";
import { recordKinds, signs, type RecordKind } from "../../plan/schema";
import type { Wanted } from "../procedure";
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

/** Reads what a step's record is compared with from the two hidden cells at which its formulas look; null where anything of the kind will do. */
export function readWanted(kind: RecordKind, low: CellValue, high: CellValue): Wanted | null {
  if (kind === "tick" || isBlank(low)) return null;
  if (kind === "address") return { by: "address", canonical: showCell(low), full: showCell(high) };
  return typeof low === "number" && typeof high === "number" ? { by: "range", least: low, most: high } : { by: "text", text: showCell(low) };
}
