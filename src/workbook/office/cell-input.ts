import type { Cell } from "../../sheet";

/** What a cell takes when it is set as a formula: text stays text only where the number format is "@". */
export function cellInput({ value, formula }: Cell): string | number | boolean {
  return formula ?? value ?? "";
}

/**
 * Chooses the number format under which a cell keeps what is written into it.
 *
 * Text needs "@", or it turns into a formula, a date or a number. A formula must not find "@", or it stays text.
 */
export function safeFormat({ value, formula }: Cell, wanted: string): string {
  if (formula !== undefined) return wanted === "@" ? "General" : wanted;
  return typeof value === "string" && value !== "" ? "@" : wanted;
}
