import { invalid } from "../planning/text";
import type { CellWrite, Changes } from "../planning/plan/changes";
import type { WorkbookSnapshot } from "../sheet";
import type { Cell } from "../sheet";
import type { Edit, WorkbookPort } from "../workbook/port";
import { readShown } from "./read-plan";

/**
 * Writes the changes that a person was shown, provided that the workbook still asks for exactly these.
 *
 * The workbook is read again and the changes are planned again; where somebody's edit in between makes them come out otherwise,
 * nothing is written and the sentence says so. `read` reads what the changes are planned from.
 */
export async function writeShownChanges(port: WorkbookPort, shown: Changes, planAgain: (workbook: WorkbookSnapshot) => Changes, read = readShown): Promise<void> {
  const now = planAgain(await read(port));
  if (!sameChanges(shown, now)) {
    throw invalid("workbook", null, "The plan was edited after this was shown, so nothing was written. Look at the changes again.");
  }
  if (now.writes.length > 0) await port.apply(editsOf(now));
}

/** Turns changes into edits: tables grow first, then cells are written, block by block of neighbouring rows. */
export function editsOf({ writes, growths }: Changes): Edit[] {
  return [...growths.map((growth): Edit => ({ kind: "resize-table", ...growth })), ...blocksOf(writes)];
}

function blocksOf(writes: readonly CellWrite[]): Edit[] {
  const sheets = new Map<string, CellWrite[]>();
  for (const write of writes) {
    const list = sheets.get(write.sheet);
    if (list === undefined) sheets.set(write.sheet, [write]);
    else list.push(write);
  }
  const edits: Edit[] = [];
  for (const [sheet, list] of sheets) {
    list.sort((a, b) => a.row - b.row || a.column - b.column);
    let start = 0;
    for (let end = 1; end <= list.length; end += 1) {
      if (end < list.length && list[end]!.row <= list[end - 1]!.row + 1) continue;
      edits.push(blockOf(sheet, list.slice(start, end)));
      start = end;
    }
  }
  return edits;
}

function blockOf(sheet: string, writes: readonly CellWrite[]): Edit {
  let left = Infinity;
  let right = 0;
  for (const { column } of writes) {
    left = Math.min(left, column);
    right = Math.max(right, column);
  }
  const top = writes[0]!.row;
  const bottom = writes.at(-1)!.row;
  const cells: (Cell | null)[][] = Array.from({ length: bottom - top + 1 }, () => new Array<Cell | null>(right - left + 1).fill(null));
  for (const { row, column, value } of writes) cells[row - top]![column - left] = value === null ? {} : { value };
  return { kind: "write", sheet, row: top, column: left, cells };
}

function sameChanges(a: Changes, b: Changes): boolean {
  return a.writes.length === b.writes.length && a.writes.every((write, index) => sameWrite(write, b.writes[index]!));
}

function sameWrite(a: CellWrite, b: CellWrite): boolean {
  return a.sheet === b.sheet && a.row === b.row && a.column === b.column && a.value === b.value && sameCell(a.before, b.before);
}

function sameCell(a: CellWrite["before"], b: CellWrite["before"]): boolean {
  if (typeof a === "object" && a !== null && typeof b === "object" && b !== null) return a.error === b.error;
  return a === b;
}
