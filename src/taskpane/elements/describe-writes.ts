import type { CellWrite } from "../../planning/plan/changes";
import { cellAddress, type CellValue, type WorkbookSnapshot } from "../../sheet";

/** A change as a person reads it. */
export interface DescribedWrite {
  /** Sheet and cell, such as Ports E6. */
  readonly cell: string;
  /** What the row is about: the first cells that say something to the left. */
  readonly of: string;
  readonly before: string;
  readonly after: string;
}

/** How many cells to the left say what a row is about. */
const cellsThatName = 3;

/** Describes the first `most` changes, sheet by sheet down the rows; a row that is new is named by what is written into it. */
export function describeWrites({ sheets }: WorkbookSnapshot, writes: readonly CellWrite[], most: number): readonly DescribedWrite[] {
  const order = new Map(sheets.map(({ name }, index) => [name, index]));
  const sorted = [...writes].sort((a, b) => (order.get(a.sheet) ?? 0) - (order.get(b.sheet) ?? 0) || a.row - b.row || a.column - b.column);
  const written = new Map(writes.map((write) => [keyOf(write), write.value]));
  return sorted.slice(0, most).map((write) => {
    const { sheet, row, column, before, value } = write;
    const line = sheets[order.get(sheet) ?? -1]?.values[row] ?? [];
    const left = Array.from({ length: column }, (_, at) => showValue(written.get(keyOf({ sheet, row, column: at })) ?? line[at] ?? null));
    const names = left.filter((text) => text !== "").slice(0, cellsThatName);
    return { cell: `${sheet} ${cellAddress(write)}`, of: names.join(" · "), before: showValue(before) || "–", after: showValue(value) || "–" };
  });
}

function keyOf({ sheet, row, column }: Pick<CellWrite, "sheet" | "row" | "column">): string {
  return `${row} ${column} ${sheet}`;
}

function showValue(value: CellValue): string {
  if (value === null) return "";
  return typeof value === "object" ? value.error : String(value);
}
