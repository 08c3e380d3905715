import type { Cell } from "../../../sheet";
import { at, type TabColumn } from "./tab-columns";
import type { TabStyle } from "./tab-styles";

/** One row of the summary: its cells by column number, and which of them run together. */
export interface SummaryRow {
  readonly cells: ReadonlyMap<number, Cell>;
  /** First and last column of cells that are merged. */
  readonly merges: readonly (readonly [number, number])[];
}

/** Columns of the tab over which a cell of the summary runs. */
export interface Span {
  readonly from: TabColumn;
  readonly to: TabColumn;
}

export const blankRow: SummaryRow = { cells: new Map(), merges: [] };

/** Makes a row of cells that run over some columns each; the covered ones take on a style, so that frames close. */
export function spanRow(cells: readonly (readonly [Span, Cell])[], coveredStyle?: TabStyle): SummaryRow {
  const all = new Map<number, Cell>();
  for (const [{ from, to }, cell] of cells) {
    all.set(at[from], cell);
    for (let column = at[from] + 1; column <= at[to]; column += 1) all.set(column, { style: coveredStyle ?? cell.style });
  }
  return { cells: all, merges: cells.flatMap(([{ from, to }]) => (from === to ? [] : [[at[from], at[to]] as const])) };
}

/** Sets two rows side by side; a side that has ended stays blank. */
export function joinRows(left: SummaryRow = blankRow, right: SummaryRow = blankRow): SummaryRow {
  return { cells: new Map([...left.cells, ...right.cells]), merges: [...left.merges, ...right.merges] };
}

/** A column of a small table: its label, and the columns of the tab over which it runs. */
export interface SummaryColumn extends Span {
  readonly label: string;
}

/** Makes a small table: a row of labels, then its lines. Nothing where there is no line. */
export function summaryTable(columns: readonly SummaryColumn[], lines: readonly (readonly Cell[])[]): SummaryRow[] {
  if (lines.length === 0) return [];
  const labels = spanRow(columns.map((column) => [column, { value: column.label, style: "label" }]));
  return [labels, ...lines.map((line) => spanRow(columns.map((column, index) => [column, line[index] ?? {}]), "fact"))];
}

/** Makes a cell that states a fact in words; blank where there are none. */
export function fact(value: string): Cell {
  return value === "" ? { style: "fact" } : { value, style: "fact" };
}

/** Takes the first sentence of a text that has several. */
export function firstSentence(text: string): string {
  return /^.*?[.!](?=\s|$)/s.exec(text)?.[0] ?? text;
}

/** Makes a cell that states a figure; blank where there is none. */
export function figure(value: number | null): Cell {
  return value === null ? fact("") : { value, style: Number.isInteger(value) ? "factCount" : "factNumber" };
}
