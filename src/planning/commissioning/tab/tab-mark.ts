import type { SheetSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import { at, markColumns } from "./tab-columns";
import type { TabPlaces } from "./tab-reading";

/** Text of the hidden cell by which a tab is recognised; job id, build, first build and state stand to its right. */
export const tabMarker = "Commissioning tab";

/** What stands in the state of a tab: only a whole one counts. */
export const tabStates = { whole: "whole", unfinished: "unfinished" } as const;

/** Where the state stands on a tab as it is built. */
export const stateCell = { row: 0, column: at[markColumns.state] } as const;

/** What identifies a tab, whatever its sheet is called. */
export interface TabMark {
  readonly jobId: string;
  readonly build: number;
  /** When the job's tab was first built, which tells plans apart that use the same ids. */
  readonly born: string;
  /** False while its build has not come to its end. */
  readonly whole: boolean;
}

/** Rows at the top of a sheet among which the marker is looked for: people may have put some above it. */
const rowsSearched = 20;

/** Finds the cell of a sheet that marks it as a tab; null where it is none. */
export function findMarker(sheet: SheetSnapshot): { readonly row: number; readonly column: number } | null {
  for (let row = 0; row < Math.min(sheet.values.length, rowsSearched); row += 1) {
    const column = sheet.values[row]!.findIndex((cell) => typeof cell === "string" && cell.trim() === tabMarker);
    if (column >= 0) return { row, column };
  }
  return null;
}

/** Tells whether a sheet is a commissioning tab. */
export function isTab(sheet: SheetSnapshot): boolean {
  return findMarker(sheet) !== null;
}

/** Reads what stands in the row of the marker under the headers of its columns, between which people may have put some of their own. */
export function readMark(sheet: SheetSnapshot, { row, column }: { readonly row: number; readonly column: number }, columns: TabPlaces["columns"]): TabMark {
  const cell = (key: keyof typeof markColumns) => sheet.values[row]?.[columns[markColumns[key]] ?? column + at[markColumns[key]] - at[markColumns.marker]];
  return {
    jobId: canonicalText(cell("jobId")),
    build: Number(cell("build")) || 0,
    born: canonicalText(cell("born")),
    whole: canonicalText(cell("state")) === tabStates.whole,
  };
}
