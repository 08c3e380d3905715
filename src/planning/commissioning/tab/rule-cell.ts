import { isBlank, showCell, type CellValue } from "../../../sheet";
import { recordKinds, signs, type RecordKind } from "../../plan/schema";
import type { Wanted } from "../procedure";
import type { StepRecord } from "../record";

/** What the hidden cell Rule says of a step, as words with a space between. */
type StepRule = Pick<StepRecord, "required" | "sign" | "kind" | "holdPoint">;

/** First word of the rule of a step without which the job cannot be closed; formulas look for it. */
export const requiredWord = "required";

/** Last word of the rule of a hold point. */
const holdWord = "hold";

/** Writes the rule of a step. */
export function ruleText({ required, sign, kind, holdPoint }: StepRule): string {
  return [required ? requiredWord : "optional", sign, kind, ...(holdPoint ? [holdWord] : [])].join(" ");
}

/** Reads the rule of a step; a cell that people emptied asks for nothing. */
export function readRule(text: string): StepRule {
  const [need, sign = "none", kind, hold] = text.split(" ");
  return {
    required: need === requiredWord,
    sign: signs.find((one) => one === sign) ?? "one",
    kind: recordKinds.find((one) => one === kind) ?? "text",
    holdPoint: hold === holdWord,
  };
}

/** What the hidden cell Rule says of the row of a grid: by which step it is signed, and the step and rule of each slot by its place. */
export interface GridRule {
  readonly signKey: string;
  readonly slots: readonly (SlotRule | null)[];
}

/** What a slot is of: its step and rule; where subjects stand side by side, what heads its columns, and its subject. */
export interface SlotRule {
  readonly stepId: string;
  readonly head?: string;
  readonly subject?: string;
  readonly rule: StepRule;
}

/** Word that tells the rule of a grid's row from that of a step. */
export const gridWord = "grid";

/** Writes the rule of a grid's row: it is required where one of its slots is. */
export function gridRuleText({ signKey, slots }: GridRule): string {
  const isRequired = slots.some((slot) => slot?.rule.required === true);
  const textOf = ({ rule, stepId, head, subject }: SlotRule): string => [`${ruleText(rule)} ${stepId}`, ...(head === undefined ? [] : [head, subject])].join("\n");
  return `${isRequired ? requiredWord : "optional"} ${gridWord} ${packed([signKey, ...slots.map((slot) => slot && textOf(slot))])}`;
}

/** Reads the rule of a grid's row; a place of which it says nothing is null. */
export function readGridRule(text: string): GridRule {
  const [signKey = null, ...lines] = unpacked(text.split(" ").slice(2).join(" "));
  // What stands behind the rule of a slot is its step id, whatever it says: none is a hold point.
  const slots = lines.map((line): SlotRule | null => {
    if (line === null) return null;
    const [rule = "", head, subject] = line.split("\n");
    return { rule: { ...readRule(rule), holdPoint: false }, stepId: rule.split(" ").slice(3).join(" "), ...(head !== undefined && subject !== undefined && { head, subject }) };
  });
  return { signKey: signKey ?? "", slots };
}

/** Writes what stands in a hidden cell for every slot of a row, by place. */
export function packed(texts: readonly (string | null)[]): string {
  return JSON.stringify(texts);
}

/** Reads what stands in a hidden cell for every slot of a row; nothing where that was typed over. */
export function unpacked(text: string): (string | null)[] {
  try {
    const list: unknown = JSON.parse(text);
    return Array.isArray(list) ? list.map((one) => (typeof one === "string" ? one : null)) : [];
  } catch {
    return [];
  }
}

/** Reads what a step's record is compared with from the two hidden cells at which its formulas look; null where anything of the kind will do. */
export function readWanted(kind: RecordKind, low: CellValue, high: CellValue): Wanted | null {
  if (kind === "tick" || isBlank(low)) return null;
  if (kind === "address") return { by: "address", canonical: showCell(low), full: showCell(high) };
  return typeof low === "number" && typeof high === "number" ? { by: "range", least: low, most: high } : { by: "text", text: showCell(low) };
}
