import type { Cell } from "../../sheet";

/** What a cell takes when it is set as a formula: text stays text only where the number format is "@". */
export function cellInput({ value, formula }: Cell): string | number | boolean {
  return formula ?? value ?? "";
}

/**
 * Chooses the number format under which a cell keeps what is written into it.
 *
 * Text needs "@", or it turns into a formula, a date or a number. Anything else must not find "@", or it becomes text.
 */
export function safeFormat(cell: Cell, wanted: string): string {
  if (holdsMore(cell)) return wanted === "@" ? "General" : wanted;
  return typeof cell.value === "string" && cell.value !== "" ? "@" : wanted;
}

/** Tells a cell that holds something other than text: a formula, a number or a truth value. */
export function holdsMore({ value, formula }: Cell): boolean {
  return formula !== undefined || typeof value === "number" || typeof value === "boolean";
}
